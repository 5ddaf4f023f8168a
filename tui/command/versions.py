"""From what was typed to the two sides of a comparison, and which pathways stand beside which."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import (
    UnusableError,
    asked,
    is_local_sheet,
    shipped,
    under,
)
from chamberwise.tui.command.revision import (
    as_revision,
    file_at,
    folder_of,
    has_vocabulary,
    is_folder,
    library_at,
)

if TYPE_CHECKING:
    from chamberwise.engine.reading.library import File, Loaded
    from chamberwise.tui.command.finding_files import Asked
    from chamberwise.tui.command.revision import Revision


@dataclass(frozen=True, slots=True)
class Side:
    """One side: a library, and the pathways of it that are meant."""

    typed: str
    loaded: Loaded
    pathways: tuple[str, ...]
    is_library: bool = False
    """Whether a whole library was meant."""

    @property
    def covers(self) -> tuple[str, ...]:
        """The pathways that can be told apart here: under a local sheet all that it covers."""
        local = self.loaded.library.local
        return local.covers if local else self.pathways


def side(typed: str, library: Path | None) -> Side:
    """Return one side: a folder, a file, a pathway of the library, or a revision's file or folder.

    A local sheet is the pathway below it as the unit has it.

    A file that lies beside a folder of shared words is read with it; any other with the library.
    """
    revision = as_revision(typed)
    if revision is not None:
        return _at_revision(typed, revision, library)
    path = Path(typed)
    if path.is_dir():
        found = asked((), path)
        _refuse_unread(found.loaded, found.shown)
        return Side(typed, found.loaded, tuple(found.loaded.library.pathways), is_library=True)
    beside = path.parent if (path.parent / "vocabulary").is_dir() else None
    found = asked((typed,), beside if path.is_file() and beside else library)
    return _of(typed, found)


def _of(typed: str, found: Asked) -> Side:
    is_undone = found.under is not None and found.loaded.library.local is None
    _refuse_unread(found.loaded, found.checked if is_undone else found.shown)
    return Side(typed, found.loaded, found.pathways)


def _at_revision(typed: str, revision: Revision, library: Path | None) -> Side:
    from chamberwise.engine.reading.library import assemble

    if is_folder(revision):
        loaded = assemble(library_at(revision))
        _refuse_unread(loaded, tuple(loaded.files))
        return Side(typed, loaded, tuple(loaded.library.pathways), is_library=True)
    file = file_at(revision)
    folder = folder_of(revision)
    beside = library_at(folder) if has_vocabulary(folder) else _files_of(library or shipped())
    others = [each for each in beside if each.shown_as != file.shown_as]
    if is_local_sheet(file):
        return _of(typed, under(assemble(others), file))
    loaded = assemble([*others, file])
    _refuse_unread(loaded, (file.shown_as,))
    names = (file.pathway.id,) if file.pathway else ()
    return Side(typed, loaded, names)


def _files_of(folder: Path) -> list[File]:
    return list(asked((), folder).loaded.files.values())


def _refuse_unread(loaded: Loaded, shown: tuple[str, ...]) -> None:
    """Raise with every problem of form: what could not be read cannot be compared."""
    from chamberwise.engine.diagnostics.text import problem_text

    words = [file.shown_as for file in loaded.vocabulary]
    told = [
        problem_text(problem, loaded.texts)
        for name in dict.fromkeys((*shown, *words))
        if not loaded.files[name].is_whole
        for problem in loaded.files[name].problems
    ]
    if told:
        raise UnusableError("\n\n".join([*told, _("What cannot be read cannot be compared.")]))


def beside_each_other(old: Side, new: Side) -> tuple[tuple[str, str], ...]:
    """Return the pathways to compare: by name, or the one with the one where each side has one."""
    if len(old.pathways) == len(new.pathways) == 1:
        return (_one_with_one(old, new),)
    renamed = called_otherwise(old, new)
    wanted = [
        (name, renamed.get(name, name))
        for name in old.pathways
        if renamed.get(name, name) in new.pathways
    ]
    if not wanted:
        raise UnusableError(
            _("{old} and {new} have no pathway in common: nothing can be compared.").format(
                old=old.typed, new=new.typed
            )
        )
    return tuple(wanted)


def called_otherwise(old: Side, new: Side) -> dict[str, str]:
    """Return the pathways that bear another name now, each with that name."""
    from chamberwise.engine.comparing.names.same_pathway import same_pathways

    return same_pathways(old.loaded.library, new.loaded.library)


def _one_with_one(old: Side, new: Side) -> tuple[str, str]:
    """Return the two names; one that a sheet on the other side covers goes with its like there."""
    (was,), (now,) = old.pathways, new.pathways
    if was in new.covers:
        return was, was
    return (now, now) if now in old.covers else (was, now)
