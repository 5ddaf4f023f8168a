"""A library built in a test as the checks see it: loaded, though from no file."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.exploration.explore import explore
from chamberwise.engine.model.library import Library
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.engine.reading.library import File, Loaded
from chamberwise.engine.reading.tree import Tree

from tests.support.build import TODAY

Check = Callable[[Subject], Iterator[Problem]]


def loaded(library: Library) -> Loaded:
    """Return a library as if each pathway had been read from a file of its name."""
    files = {
        f"{name}.yaml": File(f"{name}.yaml", Tree(f"{name}.yaml", None), "", pathway)
        for name, pathway in library.pathways.items()
    }
    return Loaded(library, files, {name: f"{name}.yaml" for name in library.pathways})


def entries(library: Library, pathway: str) -> tuple[str, ...]:
    """Return the pathways whose walks can come to a pathway, its own first."""
    others = [name for name in library.pathways if name != pathway]
    return tuple(
        name for name in (pathway, *others) if pathway in reached_by_handover(library, name)
    )


def subject(library: Library, pathway: str, *, explored: bool = True) -> Subject:
    return Subject(
        loaded(library),
        library.pathways[pathway],
        TODAY,
        entries(library, pathway) if explored else (),
        lambda name: explore(library, name),
    )


def places(check: Check, about: Subject) -> set[str]:
    """Return the steps a check reports, as it finds them."""
    return {str(problem.pointer[1]) for problem in check(about)}
