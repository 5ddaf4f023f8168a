"""What the steps of a program show of themselves, what is known left aside."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

from chamberwise.engine.exploration.program import Node, Program
from chamberwise.engine.meaning.moments import Moment, warned_of
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.rule import ANY
from chamberwise.engine.model.step import Action, Handover, Line, Outcome, Question
from chamberwise.engine.model.words import ActId

Shown: TypeAlias = tuple[object, ...]
"""All that the moments of a move at a node hang on, what is known left aside."""

Label: TypeAlias = tuple[str, str]
"""One thing that a moment shows: of which kind, and which."""

ALWAYS: Label = ("", "")


@dataclass(frozen=True, slots=True)
class Scene:
    """The nodes at which a move shows the same moments, what is known left aside."""

    node: Node
    """The first of them."""
    moments: Sequence[Moment]
    labels: frozenset[Label]
    places: list[int] = field(default_factory=list)


def scenes(program: Program) -> list[Scene]:
    """Return all scenes of a program at which something is shown."""
    found: dict[Shown, Scene] = {}
    for place, node in enumerate(program.nodes):
        key = shown(node)
        if key and key not in found:
            moments = moments_of(node)
            labels = frozenset(label for moment in moments for label in labels_of(moment))
            found[key] = Scene(node, moments, labels)
        if key:
            found[key].places.append(place)
    return list(found.values())


def labels_of(moment: Moment) -> Sequence[Label]:
    """Return everything that a moment shows, and what every moment shows."""
    shown = (
        ("act", moment.act),
        ("asks", moment.asks),
        ("hands over to", moment.hands_over_to),
        ("by", moment.by),
    )
    labels = [ALWAYS, *((kind, name) for kind, name in shown if name is not None)]
    labels += [("warns of", act) for act in moment.warns_of]
    if moment.is_outcome:
        labels += [("outcome", moment.place.step), ("outcome", ANY)]
    return labels


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
