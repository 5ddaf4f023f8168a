"""Killing by checks: a problem is reported that the original does not have."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache, partial
from typing import TypeAlias

from chamberwise.engine.checks.by_form import OF_FORM as BY_FORM
from chamberwise.engine.checks.knowledge import asked_never_used
from chamberwise.engine.checks.registry import KNOWLEDGE, Check
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.problem import Pointer, Severity
from chamberwise.engine.exploration.explore import explore
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.engine.reading.library import Loaded

Finding: TypeAlias = tuple[PathwayId, str, Pointer]
"""What a check found and where: enough to tell a new problem from an old one."""

OF_FORM: tuple[Check, ...] = tuple(dict.fromkeys((*BY_FORM, asked_never_used.check)))
"""Checks that look at names, arrows and answers alone, or can do so where nothing is walked."""


def entries(library: Library, pathway: PathwayId) -> tuple[PathwayId, ...]:
    """Return the pathways whose walks come through one, itself first."""
    others = [name for name in library.pathways if name != pathway]
    through = (name for name in others if pathway in reached_by_handover(library, name))
    return (pathway, *through)


def connected(library: Library, pathway: PathwayId) -> tuple[PathwayId, ...]:
    """Return every pathway that walks through one may touch, itself first."""
    through = entries(library, pathway)
    reached = (each for name in through for each in reached_by_handover(library, name))
    return tuple(dict.fromkeys((*through, *reached)))


def found_by_form(loaded: Loaded, pathway: PathwayId) -> Iterator[Finding]:
    """Yield what checks of names and of shape find in a pathway."""
    yield from _found(OF_FORM, _subjects(loaded, (pathway,), walked=False))


def found_by_knowledge(loaded: Loaded, pathway: PathwayId) -> Iterator[Finding]:
    """Yield what checks of knowledge find in a pathway and in those connected with it."""
    names = connected(loaded.library, pathway)
    yield from _found(KNOWLEDGE, _subjects(loaded, names, walked=True))


def _subjects(loaded: Loaded, names: Iterable[PathwayId], *, walked: bool) -> Iterator[Subject]:
    library = loaded.library
    explored = lru_cache(maxsize=None)(partial(explore, library))
    for name in names:
        own = library.pathways[name]
        through = entries(library, name) if walked else ()
        yield Subject(loaded, own, own.reviewed, through, explored)


def _found(checks: Iterable[Check], subjects: Iterable[Subject]) -> Iterator[Finding]:
    for subject in subjects:
        for check in checks:
            for problem in check(subject):
                if problem.severity is not Severity.NOTICE:
                    yield subject.pathway.id, problem.code, problem.pointer
