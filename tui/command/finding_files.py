"""From what was typed (names, paths, a folder) to a library read from disk."""

from __future__ import annotations

from argparse import ArgumentParser
from collections.abc import Sequence
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.language.texts import gettext as _

if TYPE_CHECKING:
    from chamberwise.engine.reading.again import Again
    from chamberwise.engine.reading.library import File, Loaded


class UnusableError(Exception):
    """What was typed cannot be used; `args[0]` says why and what to do."""


def refuse_place(path: Path) -> None:
    """Raise where no file can be written at a path, before any work is done for it."""
    from chamberwise.engine.store.place import in_the_way

    if why := in_the_way(path):
        raise UnusableError(why)


@dataclass(frozen=True, slots=True)
class Under:
    """A unit's sheet and the library without it, to tell what the sheet did."""

    base: Loaded
    sheet: File


@dataclass(frozen=True, slots=True)
class Asked:
    """A library, and which of its files were asked for, in the order asked."""

    loaded: Loaded
    shown: tuple[str, ...]
    under: Under | None = None

    @property
    def pathways(self) -> tuple[str, ...]:
        """Return the names of the pathways asked for."""
        found = (self.loaded.files[name].pathway for name in self.shown)
        return tuple(pathway.id for pathway in found if pathway is not None)

    @property
    def checked(self) -> tuple[str, ...]:
        """Return the files whose problems are told: the unit's sheet first, if there is one."""
        sheet = () if self.under is None else (self.under.sheet.shown_as,)
        return tuple(dict.fromkeys((*sheet, *self.shown)))


def add_library(parser: ArgumentParser) -> None:
    """Let a command take `--library`."""
    parser.add_argument(
        "--library",
        type=Path,
        metavar=_("DIR"),
        help=_("a folder of pathways with its vocabulary/, instead of the one that comes along"),
    )


def shipped() -> Path:
    """Return the folder of the pathways that come along."""
    return Path(str(files("chamberwise.protocols")))


def add_local(parser: ArgumentParser) -> None:
    """Let a command take `--local`."""
    parser.add_argument(
        "--local", type=Path, metavar=_("SHEET"), help=_("a unit's local sheet over the pathway")
    )


def asked(
    typed: Sequence[str],
    folder: Path | None,
    local: Path | None = None,
    again: Again | None = None,
) -> Asked:
    """Read the library and the files named; a local sheet among them lies over the library.

    `again` knows what was read the last time. Raises `UnusableError` for a name that is nothing.
    """
    from chamberwise.engine.local.finding import base_beside
    from chamberwise.engine.reading.again import Again
    from chamberwise.engine.translating.finding import original_beside

    again = again or Again()
    folder = folder or shipped()
    if not folder.is_dir():
        raise UnusableError(
            _("{folder} is not a folder. Name one that holds pathways.").format(folder=folder)
        )
    paths = [Path(name) for name in typed if is_path(name)]
    for path in (*paths, *([local] if local else [])):
        if path.is_dir():
            raise UnusableError(_("{path} is a folder. Name a file in it.").format(path=path))
        if not path.is_file():
            beside = [each.name for each in path.parent.glob("*") if each.is_file()]
            advice = did_you_mean(path.name, beside, _("Check the path."))
            raise UnusableError(
                _("There is no file {path}. {advice}").format(path=path, advice=advice)
            )
    read = {path: again.file(path) for path in paths}
    sheets = [path for path in paths if is_local_sheet(read[path])]
    named = [path for path in paths if path not in sheets]
    loaded = again.library(folder, named)
    originals = [of for each in named if (of := original_beside(loaded, read[each]))]
    if originals:
        loaded = again.library(folder, [*originals, *named])
    over = _sheet(again.file(local), local) if local else None
    over = over or next((read[path] for path in sheets), None)
    if over is None:
        if not typed:
            return Asked(loaded, tuple(loaded.files))
        return Asked(loaded, tuple(dict.fromkeys(_file(name, loaded) for name in typed)))
    if len(sheets) + (local is not None) > 1:
        raise UnusableError(_("One local sheet at a time. Name one of them."))
    below = base_beside(loaded, over)
    if below is not None:
        loaded = again.library(folder, [*named, below])
    names = [name for name in typed if not sheets or Path(name) != sheets[0]]
    return under(loaded, over, [_file(name, loaded) for name in names])


def _sheet(file: File, path: Path) -> File:
    if file.tree.root is not None and not is_local_sheet(file):
        raise UnusableError(
            _("{path} is no local sheet: one begins with `local sheet:`.").format(path=path)
        )
    return file


def is_local_sheet(file: File) -> bool:
    """Whether a file is a unit's sheet over a pathway."""
    from chamberwise.engine.reading.library import is_local_sheet as says_so

    return says_so(file.tree)


def under(base: Loaded, sheet: File, named: Sequence[str] = ()) -> Asked:
    """Return the library as the unit has it, and of it what was named or what the sheet is over."""
    from chamberwise.engine.local.localising import localised

    loaded = localised(base, sheet)
    over = sheet.sheet.local.over if sheet.sheet else ""
    local = loaded.library.local
    if local is not None:
        covered = [loaded.file_of[name] for name in local.covers]
        for name in named:
            if name not in covered:
                listed = ", ".join(f"`{each}`" for each in local.covers)
                raise UnusableError(
                    _("{shown_as} does not reach {name}. It covers {listed}.").format(
                        shown_as=sheet.shown_as, name=name, listed=listed
                    )
                )
    shown = tuple(dict.fromkeys(named)) or (loaded.file_of.get(over, sheet.shown_as),)
    return Asked(loaded, shown, Under(base, sheet))


def _file(name: str, loaded: Loaded) -> str:
    if is_path(name):
        resolved = Path(name).resolve()
        return next(shown for shown in loaded.files if Path(shown).resolve() == resolved)
    if name not in loaded.file_of:
        unread = next((file for file in loaded.files if Path(file).stem == name), None)
        if unread is not None:
            return unread
        known = list(loaded.file_of)
        advice = did_you_mean(name, known, _("`chamberwise list` shows those there are."))
        if Path(f"{name}.yaml").is_file():
            advice = _("There is a file `{file}` here: name it so.").format(file=f"{name}.yaml")
        raise UnusableError(
            _("There is no pathway `{name}`. {advice}").format(name=name, advice=advice)
        )
    return loaded.file_of[name]


def is_path(name: str) -> bool:
    """Whether what was typed is a path, and not the name of a pathway."""
    return name.endswith((".yaml", ".yml")) or "/" in name or "\\" in name
