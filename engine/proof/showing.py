"""What the steps of a program show of themselves, what is known left aside."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeAlias

from chamberwise.engine.exploration.program import Node
from chamberwise.engine.meaning.moments import Moment, warned_of
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.step import Action, Handover, Line, Outcome, Question
from chamberwise.engine.model.words import ActId

Shown: TypeAlias = tuple[object, ...]
"""All that the moments of a move at a node hang on, what is known left aside."""


def shown(node: Node) -> Shown:
    """Return what is the same for nodes whose moments show the same."""
    step = node.step
    if node.is_door:
        return ()
    warned = warned_of(step) if step.cautions else None
    if isinstance(step, Question):
        return Question, step.ask, warned
    if isinstance(step, Action):
        lines = tuple([(line.act, line.who) for line in step.lines])
        return Action, node.place.pathway, lines, warned
    if isinstance(step, Handover):
        return Handover, step.to, warned
    if isinstance(step, Outcome):
        return Outcome, step.id, tuple([(line.act, line.who) for line in step.owed]), warned
    return ()


def moments_of(node: Node) -> list[Moment]:
    """Return the moments of a move at a node, in the order of `meaning.moments`."""
    step, place = node.step, node.place
    if node.is_door:
        return []
    warned = warned_of(step) if step.cautions else frozenset[ActId]()
    if isinstance(step, Question):
        return [Moment(place, 0, 0, warns_of=warned, asks=step.ask)]
    if isinstance(step, Action):
        return _of_lines(place, step.lines, warned)
    if isinstance(step, Handover):
        return [Moment(place, 0, 0, warns_of=warned, hands_over_to=step.to)]
    if isinstance(step, Outcome):
        last = Moment(place, 0, 0, warns_of=warned, is_outcome=True)
        return [*_of_lines(place, step.owed, warned), last]
    return []


def _of_lines(place: Place, lines: Iterable[Line], warned: frozenset[ActId]) -> list[Moment]:
    return [Moment(place, 0, 0, act=line.act, by=line.who, warns_of=warned) for line in lines]
