"""From what was typed (names, paths, a folder) to a library read from disk."""

from __future__ import annotations

from argparse import ArgumentParser
from collections.abc import Sequence
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING

from chamberwise.engine.diagnostics.nearest import did_you_mean

if TYPE_CHECKING:
    from chamberwise.engine.reading.library import Loaded


class UnusableError(Exception):
    """What was typed cannot be used; `args[0]` says why and what to do."""


@dataclass(frozen=True, slots=True)
class Asked:
    """A library, and which of its files were asked for, in the order asked."""

    loaded: Loaded
    shown: tuple[str, ...]

    @property
    def pathways(self) -> tuple[str, ...]:
        """Return the names of the pathways asked for."""
        found = (self.loaded.files[name].pathway for name in self.shown)
        return tuple(pathway.id for pathway in found if pathway is not None)


def add_library(parser: ArgumentParser) -> None:
    """Let a command take `--library`."""
    parser.add_argument(
        "--library",
        type=Path,
        metavar="DIR",
        help="a folder of pathways with its vocabulary/, instead of the one that comes along",
    )


def shipped() -> Path:
    """Return the folder of the pathways that come along."""
    return Path(str(files("chamberwise.protocols")))


def asked(typed: Sequence[str], folder: Path | None) -> Asked:
    """Read the library and the files named. Raises `UnusableError` for a name that is nothing."""
    from chamberwise.engine.reading.library import load_library

    folder = folder or shipped()
    if not folder.is_dir():
        raise UnusableError(f"{folder} is not a folder. Name one that holds pathways.")
    paths = [Path(name) for name in typed if _is_path(name)]
    for path in paths:
        if not path.is_file():
            raise UnusableError(f"There is no file {path}. Check the path.")
    loaded = load_library(folder, paths)
    if not typed:
        return Asked(loaded, tuple(loaded.files))
    return Asked(loaded, tuple(dict.fromkeys(_file(name, loaded) for name in typed)))


def _file(name: str, loaded: Loaded) -> str:
    if _is_path(name):
        resolved = Path(name).resolve()
        return next(shown for shown in loaded.files if Path(shown).resolve() == resolved)
    if name not in loaded.file_of:
        unread = next((file for file in loaded.files if Path(file).stem == name), None)
        if unread is not None:
            return unread
        known = list(loaded.file_of)
        advice = did_you_mean(name, known, "`chamberwise list` shows those there are.")
        raise UnusableError(f"There is no pathway `{name}`. {advice}")
    return loaded.file_of[name]


def _is_path(name: str) -> bool:
    return name.endswith((".yaml", ".yml")) or "/" in name or "\\" in name
