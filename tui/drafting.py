"""A file while it is written in some editor, read again at every save."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TypeAlias

from chamberwise.engine.local.localising import localised
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.reading.library import File, Loaded, assemble, read_file, read_file_again

Stamps: TypeAlias = Mapping[str, tuple[int, int]]
"""Of each file, when it was written and how long it is; a file that is gone has no entry."""


@dataclass(frozen=True, slots=True)
class Draft:
    """The file being written, in the library it is read in, as it stood at some moment."""

    loaded: Loaded
    shown_as: str
    stamps: Stamps
    base: Loaded | None = None
    """The library below, where the file is a unit's sheet over it."""
    sheet: File | None = None
    """That sheet as it was read."""

    @property
    def file(self) -> File:
        """The file being written."""
        return self.loaded.files[self.shown_as]

    @property
    def source(self) -> File | None:
        """The file of its pathway: itself, or the one that the sheet lies over."""
        pathway = self.pathway
        return self.loaded.source(pathway.id) if pathway is not None else None

    @property
    def pathway(self) -> Pathway | None:
        """Its pathway as far as it could be read; a sheet's as it stands under the sheet."""
        if self.base is not None:
            local = self.loaded.library.local
            return self.loaded.library.pathways[local.over] if local is not None else None
        pathway = self.file.pathway
        return pathway if pathway is not None and pathway.id in self.loaded.file_of else None


def draft_of(loaded: Loaded, shown_as: str) -> Draft:
    """Return a file as it has just been read."""
    return Draft(loaded, shown_as, stamps(loaded.files))


def draft_of_sheet(loaded: Loaded, base: Loaded, sheet: File) -> Draft:
    """Return a unit's sheet as it has just been read and laid over a library."""
    return Draft(loaded, sheet.shown_as, stamps(loaded.files), base, sheet)


def stamps(files: Iterable[str | Path]) -> Stamps:
    """Return the stamps of files as they lie there now."""
    found = {}
    for each in files:
        try:
            seen = Path(each).stat()
        except OSError:
            continue
        found[str(each)] = (seen.st_mtime_ns, seen.st_size)
    return found


def read_again(draft: Draft, now: Stamps) -> Draft:
    """Return the draft with every file read again that changed, and shared words that are faulty.

    A word defined twice is told in one file for the sake of another. What is the same as before,
    letter by letter, is not read again; where that is all, it is the same library.
    """
    below = draft.base or draft.loaded
    files = {name: _read(draft, file, now) for name, file in below.files.items()}
    is_same = all(file is below.files[name] for name, file in files.items())
    below = below if is_same else assemble(files.values())
    if draft.base is None or draft.sheet is None:
        return replace(draft, loaded=below, stamps=now)
    sheet = _read(draft, draft.sheet, now)
    if is_same and sheet is draft.sheet:
        return replace(draft, stamps=now)
    return replace(draft, loaded=localised(below, sheet), stamps=now, base=below, sheet=sheet)


def _read(draft: Draft, file: File, now: Stamps) -> File:
    path = Path(file.shown_as)
    if file.is_vocabulary and file.problems:
        return read_file(path)
    if draft.stamps.get(file.shown_as) == now.get(file.shown_as):
        return file
    return read_file_again(path, file)
