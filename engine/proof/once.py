"""What no walk does twice, by the arrows between steps alone."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
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

Back: TypeAlias = Mapping[Place, Sequence[Place]]
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
    back: dict[Place, list[Place]] = {}
    for name, step in every:
        if isinstance(step, Handover):
            for outcome, target in step.on_return:
                back.setdefault(Place(step.to, outcome), []).append(Place(name, target))
    return back


def _on_a_ring(library: Library, back: Back, start: Place) -> bool:
    met, waiting = {start}, [start]
    while waiting:
        place = waiting.pop()
        step = library.step(place)
        onward = [Place(place.pathway, name) for name in _arrows(step)]
        if isinstance(step, Handover):
            onward.append(Place(step.to, library.pathways[step.to].start))
        for there in (*onward, *back.get(place, ())):
            if there == start:
                return True
            if there not in met:
                met.add(there)
                waiting.append(there)
    return False


def _arrows(step: Step) -> Iterator[StepId]:
    """Yield where a step leads in its own pathway, and the exit of its bound."""
    if isinstance(step, Question):
        yield from {answer.go_to: None for answer in step.answers}
    elif isinstance(step, Action):
        yield step.go_to
    elif isinstance(step, Branch):
        yield from (row.go_to for row in step.rows)
        yield from (name for name in (step.otherwise, step.not_known) if name is not None)
    if step.bound:
        yield step.bound.after_that
