"""The order in which a look takes states: what is likeliest to show what is still wanted."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from heapq import heapify, heappop, heappush
from typing import TypeAlias

from chamberwise.engine.exploration.explored import Explored
from chamberwise.engine.exploration.program import Counter, Program
from chamberwise.engine.model.library import Place

Wanted: TypeAlias = Callable[[Explored], set[Place]]
"""The steps still wanted, none when what was found is enough."""

FIRST_LOOK_UP = 40
MOST_AIMS = 8
NEWS_AHEAD, ROUND_AHEAD = 50, 20_000
"""How far a state stands ahead of others that shows something new, and for each round of a loop

towards an exit nobody has come to yet.
"""


@dataclass(slots=True)
class Likeliest:
    """Takes states as they are met and gives them back in a better order; `news` show new bits."""

    found: Explored
    wanted: Wanted
    news: set[int]
    queue: list[tuple[int, int]] = field(default_factory=list)
    rounds: list[Counter] = field(default_factory=list)
    times: dict[int, int] = field(default_factory=dict)

    def of(self, waiting: list[int], *, outermost: bool) -> Iterator[int]:
        """Yield the states that are put into `waiting`, until none is left or none is wanted."""
        turn, look_up = 0, FIRST_LOOK_UP
        while waiting or self.queue:
            for state in waiting:
                self._take(state)
            waiting.clear()
            turn += 1
            if outermost and turn > look_up:
                look_up += look_up // 4
                wanted = self.wanted(self.found)
                if not wanted:
                    return
                self._aim(_rounds_to(self.found.program, wanted))
            yield -heappop(self.queue)[1]

    def _take(self, state: int) -> None:
        node = self.found.nodes[state]
        self.times[node] = self.times.get(node, 0) + 1
        heappush(self.queue, (self.times[node] - self._ahead(state), -state))

    def _aim(self, rounds: list[Counter]) -> None:
        if rounds != self.rounds and len(rounds) <= MOST_AIMS:
            self.rounds = rounds
            self.queue = [(value - self._ahead(-state), state) for value, state in self.queue]
            heapify(self.queue)

    def _ahead(self, state: int) -> int:
        bits = self.found.bits[state]
        done = sum((bits & counter.mask) >> counter.shift for counter in self.rounds)
        return done * ROUND_AHEAD + (NEWS_AHEAD if state in self.news else 0)


def _rounds_to(program: Program, wanted: set[Place]) -> list[Counter]:
    """Return the counts that have to fill before a walk comes to some wanted steps."""
    bounds = ((place, program.library.step(place).bound) for place in program.counters)
    return [
        program.counters[place]
        for place, bound in bounds
        if bound and Place(place.pathway, bound.after_that) in wanted
    ]
