"""Where each answer may lead, handover by handover, whatever is known: a map to steer by.

More walks are on the map than can really happen, so what no set of walks on it can do, no set of
real ones can either.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import NamedTuple, TypeAlias

from chamberwise.engine.graph.targets import targets
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Handover, Outcome, PathwayId, Question

Answer: TypeAlias = tuple[Place, str]
Spot: TypeAlias = tuple[tuple[Place, ...], Place]
"""The handovers to come back to, and the step."""

UNREACHED = 1 << 30


class Arrow(NamedTuple):
    """From one spot to another by their numbers; `answer` is a bit, 0 for none."""

    start: int
    to: int
    answer: int


@dataclass(slots=True)
class Guide:
    """The map of one pathway. Answers are bits, in the order in which a walk may meet them."""

    answers: dict[Answer, int] = field(default_factory=dict)
    number: dict[Spot, int] = field(default_factory=dict)
    arrows: list[Arrow] = field(default_factory=list)
    asks: list[int] = field(default_factory=list)
    """By spot, the answers of its own question."""
    ahead: list[int] = field(default_factory=list)
    """By spot, the answers that may still come from there on."""
    before: list[list[int]] = field(default_factory=list)

    def far(self, wanted: int) -> list[int]:
        """Return how many arrows lie between each spot and the nearest that asks for one wanted."""
        found = [UNREACHED] * len(self.asks)
        waiting = [spot for spot, asks in enumerate(self.asks) if asks & wanted]
        for spot in waiting:
            found[spot] = 0
        for spot in waiting:  # grows while it is gone through
            for earlier in self.before[spot]:
                if found[earlier] == UNREACHED:
                    found[earlier] = found[spot] + 1
                    waiting.append(earlier)
        return found

    def leads_on(self, wanted: int) -> int:
        """Return those of some answers after which another of them may still come."""
        found = 0
        for arrow in self.arrows:
            if arrow.answer & wanted and self.ahead[arrow.to] & wanted & ~arrow.answer:
                found |= arrow.answer
        return found


def guide(library: Library, pathway: PathwayId) -> Guide:
    """Return the map of a pathway."""
    made = Guide()
    first: Spot = ((), Place(pathway, library.pathways[pathway].start))
    waiting = [first]
    made.number[first] = 0
    for here, spot in enumerate(waiting):  # grows while it is gone through
        asks = 0
        for name, there in _ways(library, spot):
            bit = 0
            if name is not None:
                bit = made.answers.setdefault((spot[1], name), 1 << len(made.answers))
            asks |= bit
            if there not in made.number:
                made.number[there] = len(waiting)
                waiting.append(there)
            made.arrows.append(Arrow(here, made.number[there], bit))
        made.asks.append(asks)
    made.before = [[] for _ in waiting]
    for arrow in made.arrows:
        made.before[arrow.to].append(arrow.start)
    made.ahead = _look_ahead(made)
    return made


def _ways(library: Library, spot: Spot) -> Iterator[tuple[str | None, Spot]]:
    way_back, place = spot
    step = library.step(place)
    if isinstance(step, Handover):
        there = Place(step.to, library.pathways[step.to].start)
        yield None, ((*way_back, place) if step.on_return else (), there)
        if step.bound:
            yield None, (way_back, Place(place.pathway, step.bound.after_that))
    elif isinstance(step, Outcome):
        handover = library.step(way_back[-1]) if way_back else None
        back = dict(handover.on_return).get(step.id) if isinstance(handover, Handover) else None
        if back is not None:
            yield None, (way_back[:-1], Place(way_back[-1].pathway, back))
    else:
        answers = {each.id for each in step.answers} if isinstance(step, Question) else set()
        for target in targets(step):
            there = Place(place.pathway, target.step)
            yield target.label if target.label in answers else None, (way_back, there)


def _look_ahead(made: Guide) -> list[int]:
    """Return what may still come from each spot: passed back along the arrows until all is told."""
    found = list(made.asks)
    waiting = list(range(len(found)))
    while waiting:
        spot = waiting.pop()
        for earlier in made.before[spot]:
            if found[spot] & ~found[earlier]:
                found[earlier] |= found[spot]
                waiting.append(earlier)
    return found
