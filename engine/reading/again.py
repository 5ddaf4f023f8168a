"""Reading a library over and over: what is the same, letter by letter, is not read again."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path

from chamberwise.engine.reading.library import (
    File,
    Loaded,
    assemble,
    library_paths,
    read_file,
    read_file_again,
)


@dataclass(slots=True)
class Again:
    """What was read the last time."""

    _files: dict[Path, File] = field(default_factory=dict)
    _loaded: Loaded | None = None
    _of: tuple[File, ...] = ()

    @property
    def paths(self) -> tuple[Path, ...]:
        """Return where every file lies that was read so far."""
        return tuple(self._files)

    def file(self, path: Path) -> File:
        """Return a file as it stands now; one that did not change is the same object.

        Shared words that are faulty are read anew: a word defined twice is told in one file for the
        sake of another.
        """
        before = self._files.get(path)
        if before is None or (before.is_vocabulary and before.problems):
            found = read_file(path)
        else:
            found = read_file_again(path, before)
        self._files[path] = found
        return found

    def library(self, folder: Path, extra: Iterable[Path]) -> Loaded:
        """Return a library as it stands now; where no file changed, it is the same object."""
        files = tuple([self.file(path) for path in (*library_paths(folder), *extra)])
        is_same = len(files) == len(self._of) and all(map(_is, files, self._of))
        if self._loaded is None or not is_same:
            self._loaded, self._of = assemble(files), files
        return self._loaded


def _is(one: File, other: File) -> bool:
    return one is other
