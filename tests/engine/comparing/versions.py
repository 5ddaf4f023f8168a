"""Two versions out of one library on disk, the new one with pieces of text exchanged."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from chamberwise.engine.comparing.compare import Comparison, Version, compare
from chamberwise.engine.reading.library import Loaded, assemble, read_text
from chamberwise.engine.stamp.copies import Register

from tests.support.build import TODAY

FOLDER = Path(__file__).resolve().parents[2] / "library"
PATHWAY = "shallow-chamber"
NOTHING_PRINTED = Register()


@cache
def texts() -> dict[str, str]:
    """Return every file of the library by name, shared words first."""
    paths = [*sorted(FOLDER.glob("vocabulary/*.yaml")), *sorted(FOLDER.glob("*.yaml"))]
    return {path.name: path.read_text(encoding="utf-8") for path in paths}


@cache
def old() -> Loaded:
    return assemble([read_text(text, name) for name, text in texts().items()])


def new(*exchanged: tuple[str, str]) -> Loaded:
    """Return the library in which each piece of text, found once, is another; it reads whole."""
    edited = dict(texts())
    for was, now in exchanged:
        (name,) = [name for name, text in edited.items() if text.count(was) == 1]
        edited[name] = edited[name].replace(was, now)
    loaded = assemble([read_text(text, name) for name, text in edited.items()])
    assert all(file.is_whole for file in loaded.files.values())
    return loaded


def compared(*exchanged: tuple[str, str], register: Register = NOTHING_PRINTED) -> Comparison:
    sides = Version(old(), PATHWAY), Version(new(*exchanged), PATHWAY)
    return compare(*sides, register, TODAY)
