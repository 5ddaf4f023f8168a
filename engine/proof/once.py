"""What no walk does twice, by the arrows between steps alone."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TypeAlias

from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.rule import AnyOf, Happening
from chamberwise.engine.model.step import (
    Action,
    Branch,
    Handover,
    Outcome,
    PathwayId,
    Question,
    Step,
    StepId,
)

Back: TypeAlias = Mapping[tuple[PathwayId, StepId], Sequence[Place]]
"""By outcome, where handovers come back to."""


def comes_again(library: Library, any_of: AnyOf) -> bool:
    """Whether arrows lead back to a step from where one of several happenings may be shown."""
    every = [
        (name, step) for name, each in library.pathways.items() for step in each.steps.values()
    ]
    shows = [
        Place(name, step.id) for name, step in every if any(_may_show(step, one) for one in any_of)
    ]
    back = _back(every)
    return any(_on_a_ring(library, back, place) for place in shows)


def _may_show(step: Step, wanted: Happening) -> bool:
    if wanted.acts:
        lines = getattr(step, "lines", getattr(step, "owed", ()))
        return any(line.act in wanted.acts for line in lines)
    if wanted.asks:
        return isinstance(step, Question) and step.ask in wanted.asks
    if wanted.outcomes:
        return isinstance(step, Outcome)
    return isinstance(step, Handover) or not wanted.hands_over_to


def _back(every: Sequence[tuple[PathwayId, Step]]) -> Back:
    back: dict[tuple[PathwayId, StepId], list[Place]] = {}
    for name, step in every:
        if isinstance(step, Handover):
            for outcome, target in step.on_return:
                back.setdefault(Place(step.to, outcome), []).append(Place(name, target))
    return back


def _on_a_ring(library: Library, back: Back, start: Place) -> bool:
    met: set[tuple[PathwayId, StepId]] = {start}
    waiting: list[tuple[PathwayId, StepId]] = [start]
    while waiting:
        place = waiting.pop()
        pathway, name = place
        step = library.pathways[pathway].steps[name]
        onward = [(pathway, target) for target in _arrows(step)]
        if isinstance(step, Handover):
            onward.append((step.to, library.pathways[step.to].start))
        for there in (*onward, *back.get(place, ())):
            if there == start:
                return True
            if there not in met:
                met.add(there)
                waiting.append(there)
    return False


def _arrows(step: Step) -> Sequence[StepId]:
    """Return where a step leads in its own pathway, and the exit of its bound."""
    arrows: list[StepId] = []
    if isinstance(step, Question):
        arrows = [answer.go_to for answer in step.answers]
    elif isinstance(step, Action):
        arrows = [step.go_to]
    elif isinstance(step, Branch):
        rest = (step.otherwise, step.not_known)
        arrows = [row.go_to for row in step.rows] + [name for name in rest if name is not None]
    elif isinstance(step, Handover):
        arrows = [target for _, target in step.on_return]
    return [*arrows, step.bound.after_that] if step.bound else arrows
