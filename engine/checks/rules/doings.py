"""What can come about in some pathways, by a look at their steps alone."""

from __future__ import annotations

from collections.abc import Container, Iterable
from dataclasses import dataclass, field

from chamberwise.engine.meaning.moments import warned_of
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import (
    Action,
    Handover,
    Line,
    Outcome,
    PathwayId,
    Question,
    Step,
)
from chamberwise.engine.model.words import ActId, Effects, FindingId, Words


@dataclass(frozen=True, slots=True)
class Doings:
    """What steps do, ask and show; whether a walk comes to them is not looked at."""

    lines: set[tuple[ActId | None, str]] = field(default_factory=set)
    """The act of each line, and the duty that does it."""
    warned: set[ActId] = field(default_factory=set)
    asked: set[FindingId] = field(default_factory=set)
    told: set[FindingId] = field(default_factory=set)
    """Findings asked, made known, or set by the unit."""
    stale: set[FindingId] = field(default_factory=set)
    """Findings that something makes stale, or that go stale by themselves."""
    outcomes: set[str] = field(default_factory=set)
    handovers: set[PathwayId] = field(default_factory=set)
    strange: set[str] = field(default_factory=set)
    """Names that steps use and nobody has defined: perhaps misspelt, for what seems missing."""


def doings(library: Library, pathways: Iterable[PathwayId], words: Words) -> Doings:
    """Return what can come about in some pathways, for rules that speak of some words."""
    found = Doings()
    for finding in words.findings.values():
        if finding.choice is not None:
            found.told.add(finding.id)
        if finding.may_change_by_itself:
            found.stale.add(finding.id)
    for name in pathways:
        for step in library.pathways[name].steps.values():
            _look(step, library.words(name), found)
    return found


def _look(step: Step, words: Words, found: Doings) -> None:
    found.warned.update(warned_of(step))
    match step:
        case Question():
            found.asked.add(step.ask)
            found.told.add(step.ask)
            _define(step.ask, words.findings, found)
        case Action():
            _do(step.lines, words, found)
            _change(step.effects, words, found)
        case Handover():
            found.handovers.add(step.to)
        case Outcome():
            _do(step.owed, words, found)
            found.outcomes.add(step.id)
        case _:
            pass


def _do(lines: Iterable[Line], words: Words, found: Doings) -> None:
    for line in lines:
        found.lines.add((line.act, line.who))
        _define(line.who, words.duties, found)
        act = words.acts.get(line.act or "")
        if act is not None:
            _change(act.effects, words, found)
        elif line.act is not None:
            found.strange.add(line.act)


def _change(effects: Effects, words: Words, found: Doings) -> None:
    known = [name for name, _ in effects.known]
    found.told.update(known)
    found.stale.update(effects.stale)
    for name in (*known, *effects.stale):
        _define(name, words.findings, found)


def _define(name: str, defined: Container[str], found: Doings) -> None:
    if name not in defined:
        found.strange.add(name)
