"""The choices that a unit has to make before anybody can approve its pathway."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Action, Branch, PathwayId, Question
from chamberwise.engine.model.words import Finding
from chamberwise.engine.reading.digest import reached_by_handover


def open_choices(library: Library, pathway: PathwayId) -> tuple[Finding, ...]:
    """Return every choice that walks from a pathway come to and that is not set, each once."""
    return tuple(
        finding
        for finding in every_choice(library, pathway)
        if finding.choice and finding.choice.chosen is None
    )


def every_choice(library: Library, pathway: PathwayId) -> tuple[Finding, ...]:
    """Return every choice that walks from a pathway come to, each once, as they are met."""
    found = {
        finding.id: finding
        for name in reached_by_handover(library, pathway)
        for finding in _named(library, name)
        if finding.choice is not None
    }
    return tuple(found.values())


def _named(library: Library, pathway: PathwayId) -> Iterator[Finding]:
    findings = library.words(pathway).findings
    for step in library.pathways[pathway].steps.values():
        names: tuple[str, ...] = ()
        match step:
            case Question():
                names = (step.ask,)
            case Action():
                names = step.choices
            case Branch():
                names = tuple(name for row in step.rows for name, _ in row.when.terms)
            case _:
                pass
        yield from (findings[name] for name in names if name in findings)
