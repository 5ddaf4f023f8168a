"""A library of two files, small enough to know by heart what must become of each mutant."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from shutil import copytree

from chamberwise.engine.mutants.all_mutants import mutants
from chamberwise.engine.mutants.mutant import Mutant
from chamberwise.engine.reading.library import Loaded, load_library

FOLDER = Path(__file__).parent / "library"
NAME = "leaking-wound"


@cache
def leaking() -> Loaded:
    return load_library(FOLDER)


def mutant(name: str) -> Mutant:
    return next(each for each in mutants(leaking().library, NAME) if each.id == name)


def with_list(folder: Path, text: str) -> Loaded:
    """Return the library read from a copy that has a list of reviewed mutants."""
    copy = copytree(FOLDER, folder / "library")
    (copy / "mutants").mkdir()
    (copy / "mutants" / f"{NAME}.yaml").write_text(text, encoding="utf-8")
    return load_library(copy)
