"""Walks that can really happen, steered towards answers that are still wanted."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from heapq import heappop, heappush

from chamberwise.engine.drill.coverage.guide import UNREACHED, Guide
from chamberwise.engine.drill.coverage.states import StateGraph

FIRST_SEARCH = 12_000
FURTHER_SEARCH = 400
END_SEARCH = 2_000
"""How many states are looked at before an answer is given up: at first, further on, to an end."""


@dataclass(slots=True)
class Walk:
    """A walk by its answers, bits and in order, and the shots of all its moves."""

    answers: list[int] = field(default_factory=list)
    shots: list[int] = field(default_factory=list)
    moves: list[int] = field(default_factory=list)
    """Which of the moves there were was made each time, from 0."""
    at: int = 0

    @property
    def given(self) -> int:
        """The answers given, together."""
        found = 0
        for answer in self.answers:
            found |= answer
        return found


Step = tuple[int, int, int, int]
"""Which move, its answer, its shot, and the state led to."""


@dataclass(slots=True)
class Walker:
    """Walks over the states of one pathway."""

    guide: Guide
    graph: StateGraph

    def walk_to(self, wanted: int, others: int) -> Walk | None:
        """Return a walk that gives one of some answers, and on its way on as many others as it may.

        None where no such walk was found.
        """
        walk = Walk(at=self.graph.first()[0])
        if not self._on(walk, wanted, FIRST_SEARCH):
            return None
        while left := others & ~walk.given:
            deep = self.guide.leads_on(left)
            if not (
                (deep and self._on(walk, deep, FURTHER_SEARCH))
                or (left & ~deep and self._on(walk, left & ~deep, FURTHER_SEARCH))
            ):
                break
        self._end(walk)
        return walk

    def _on(self, walk: Walk, wanted: int, most: int) -> bool:
        """Walk on to the nearest answer of those wanted; whether one was found."""
        graph, far = self.graph, self.guide.far(wanted)
        came_by: dict[int, tuple[int, Step] | None] = {walk.at: None}
        waiting = [(far[graph.spot(walk.at)], 0, walk.at)]
        while waiting and most:
            most -= 1
            state = heappop(waiting)[2]
            for number, (answer, shot, there) in enumerate(graph.ways(state)):
                step = (number, answer, shot, there)
                if answer & wanted:
                    _go(walk, came_by, state, step)
                    return True
                if there not in came_by:
                    distance = far[graph.spot(there)]
                    if distance < UNREACHED:
                        came_by[there] = (state, step)
                        heappush(waiting, (distance, len(came_by), there))
        return False

    def _end(self, walk: Walk) -> None:
        """Walk on to the nearest end, with what is owed there."""
        graph = self.graph
        came_by: dict[int, tuple[int, Step] | None] = {walk.at: None}
        waiting = [walk.at]
        for state in waiting:  # grows while it is gone through
            ways = graph.ways(state)
            if not ways:
                if state in graph.ends:
                    last = came_by[state]
                    if last is not None:
                        _go(walk, came_by, *last)
                    walk.shots.append(graph.ends[state])
                return
            for number, (answer, shot, there) in enumerate(ways):
                if there not in came_by and len(came_by) < END_SEARCH:
                    came_by[there] = (state, (number, answer, shot, there))
                    waiting.append(there)


def _go(walk: Walk, came_by: Mapping[int, tuple[int, Step] | None], state: int, last: Step) -> None:
    way = [last]
    while (before := came_by[state]) is not None:
        state, step = before
        way.append(step)
    for number, answer, shot, there in reversed(way):
        walk.moves.append(number)
        walk.shots.append(shot)
        if answer:
            walk.answers.append(answer)
        walk.at = there
