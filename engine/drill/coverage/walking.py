"""Walks that can really happen, steered towards answers that are still wanted."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from heapq import heapify, heappop, heappush

from chamberwise.engine.drill.coverage.guide import UNREACHED, Guide
from chamberwise.engine.drill.coverage.states import StateGraph
from chamberwise.engine.model.rule import RuleId

FIRST_SEARCH = 24_000
FURTHER_SEARCH = 200
END_SEARCH = 2_000
"""How many states are looked at: for every answer once, for more on the way, to an end."""

MOST_TRIES = 60
"""How many walks are tried for a rule that none of the others sets off."""

NEWS, AFTER = 10, 1_000
"""After so many answers newly found, or one and so many states, distances to those left are worked
out again, and what waits is put into their order."""

SPREAD = 3
"""How far each further state at a spot stands behind the first there."""


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

Waiting = tuple[int, int, int, int]
"""How far a state is, when it was met, the state, and how far it stands behind others there."""

CameBy = dict[int, "tuple[int, Step] | None"]


class Walker:
    """Walks over the states of one pathway. A way to every answer is found beforehand."""

    def __init__(self, guide: Guide, graph: StateGraph) -> None:
        self.guide = guide
        self.graph = graph
        self._came_by: CameBy = {graph.first(): None}
        self._shown: dict[int, tuple[int, Step]] = {}
        self._search()

    @property
    def shown(self) -> int:
        """Every answer that some walk was found to give."""
        found = 0
        for answer in self._shown:
            found |= answer
        return found

    def _search(self) -> None:
        """Find a way to each answer, the nearest first, from wherever walks came to so far."""
        graph, left = self.graph, (1 << len(self.guide.answers)) - 1
        far, times, news = self.guide.far(left), [0] * len(self.guide.asks), 0
        waiting = [(0, 0, graph.first(), 0)]
        for opened in range(FIRST_SEARCH):
            if not (waiting and left):
                return
            state = heappop(waiting)[2]
            for number, (answer, shot, there) in enumerate(graph.ways(state)):
                step = (number, answer, shot, there)
                if answer & left:
                    self._shown[answer] = (state, step)
                    left &= ~answer
                    news += 1
                if there not in self._came_by:
                    self._came_by[there] = (state, step)
                    spot = graph.spot(there)
                    times[spot] += SPREAD
                    if far[spot] < UNREACHED:
                        after, behind = len(self._came_by), times[spot]
                        heappush(waiting, (far[spot] + behind, after, there, behind))
            if news >= NEWS or (news and opened % AFTER == 0):
                far, news = self.guide.far(left), 0
                waiting = self._in_order(waiting, far)

    def _in_order(self, waiting: Iterable[Waiting], far: Sequence[int]) -> list[Waiting]:
        """Return what still leads to an answer left, the nearest first."""
        spots = ((self.graph.spot(each[2]), each) for each in waiting)
        ordered = [
            (far[spot] + behind, after, state, behind)
            for spot, (_, after, state, behind) in spots
            if far[spot] < UNREACHED
        ]
        heapify(ordered)
        return ordered

    def walk_setting_off(self, rule: RuleId) -> Walk | None:
        """Return a walk on which a rule arises; None where none was found among those known."""
        shots, tries = self.graph.shots_for(rule), MOST_TRIES
        for state in list(self._came_by):
            for number, (answer, shot, there) in enumerate(self.graph.known_ways(state)):
                if shot in shots:
                    walk = Walk()
                    _go(walk, self._came_by, state, (number, answer, shot, there))
                    if rule in self.graph.set_off(walk.shots):
                        self._end(walk)
                        return walk
                    tries -= 1
                    if not tries:
                        return None
        return None

    def walk_to(self, answer: int, others: int) -> Walk:
        """Return a walk that gives an answer shown, and on its way on as many others as it may."""
        walk = Walk()
        _go(walk, self._came_by, *self._shown[answer])
        while left := others & ~walk.given:
            deep = self.guide.leads_on(left)
            if not (
                (deep and self._on(walk, deep)) or (left & ~deep and self._on(walk, left & ~deep))
            ):
                break
        self._end(walk)
        return walk

    def _on(self, walk: Walk, wanted: int) -> bool:
        """Walk on to the nearest answer of those wanted; whether one was found."""
        graph, far = self.graph, self.guide.far(wanted)
        came_by: CameBy = {walk.at: None}
        waiting = [(far[graph.spot(walk.at)], 0, walk.at)]
        for _ in range(FURTHER_SEARCH):
            if not waiting:
                return False
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
        came_by: CameBy = {walk.at: None}
        waiting = [walk.at]
        for state in waiting:  # grows while it is gone through
            ways = graph.ways(state)
            if not ways:
                last = came_by[state]
                if last is not None:
                    _go(walk, came_by, *last)
                walk.shots.append(graph.ends.get(state, 0))
                return
            for number, (answer, shot, there) in enumerate(ways):
                if there not in came_by and len(came_by) < END_SEARCH:
                    came_by[there] = (state, (number, answer, shot, there))
                    waiting.append(there)


def _go(walk: Walk, came_by: CameBy, state: int, last: Step) -> None:
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
