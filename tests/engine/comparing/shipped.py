"""The shipped pathways with one edit in one of their files, and every change of meaning in it."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from chamberwise.engine.comparing.change import Change
from chamberwise.engine.comparing.changes import by_gravity, changes_of_pathway, changes_of_shared
from chamberwise.engine.comparing.names.calling import in_new_names
from chamberwise.engine.comparing.names.renamed import of_library
from chamberwise.engine.comparing.names.same_pathway import pathways_called, same_pathways
from chamberwise.engine.comparing.names.told_again import told_again
from chamberwise.engine.reading.library import File, Loaded, assemble, load_library, read_text

FOLDER = Path(__file__).resolve().parents[3] / "protocols"


@cache
def shipped() -> Loaded:
    return load_library(FOLDER)


def with_text(name: str, text: str) -> Loaded:
    """Return the library in which one file reads otherwise; it reads whole."""
    edited = read_text(text, name)
    assert edited.is_whole, [each.message for each in edited.problems]
    return assemble(
        [edited if _is(each, name) else each for each in shipped().files.values()],
    )


def text_of(name: str) -> str:
    return next(each.text for each in shipped().files.values() if _is(each, name))


def _is(file: File, name: str) -> bool:
    return Path(file.shown_as).name == name


def changes_between(old: Loaded, new: Loaded) -> tuple[Change, ...]:
    """Return every change of shared words and of each pathway, the gravest first."""
    renamed = same_pathways(old.library, new.library)
    was = pathways_called(old.library, renamed)
    names = told_again(was, new.library, {name: name for name in was.pathways})
    before = in_new_names(was, names)
    found = [*of_library(renamed), *changes_of_shared(before, new.library, None, names)]
    for name, pathway in before.pathways.items():
        found += changes_of_pathway(pathway, new.library.pathways[name], names)
    return by_gravity(found)
