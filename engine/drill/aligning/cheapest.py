"""The cheapest alignment: the shortest path through (place in the model, place in the run).

Of several, the one is taken that at the first difference has the synchronous move, then the move of
the model, then that of the run; then document order.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator
from dataclasses import dataclass, field
from heapq import heappop, heappush
from typing import Generic, TypeVar

from chamberwise.engine.drill.aligning.alignment import Alignment, Kind, Move, Net, Onward

Node = TypeVar("Node", bound=Hashable)
Doing = TypeVar("Doing")


class NoEndError(ValueError):
    """The model has no end that can be come to."""


@dataclass(frozen=True, slots=True)
class Costs(Generic[Doing]):
    """What a move costs, in whole numbers: of the run by its event, of the model by its doing."""

    besides: Callable[[int], int]
    left_out: Callable[[Doing], int]


@dataclass(slots=True)
class _Search(Generic[Node, Doing]):
    net: Net[Node, Doing]
    length: int
    costs: Costs[Doing]
    cost_to: dict[tuple[Node, int], int] = field(default_factory=dict)
    came_by: dict[tuple[Node, int], list[tuple[Node, int]]] = field(default_factory=dict)
    ends: list[tuple[Node, int]] = field(default_factory=list)
    cheapest: int | None = None

    def run(self) -> None:
        """Come to every pair that costs no more than the cheapest end."""
        start = (self.net.first, 0)
        self.cost_to[start] = 0
        self.came_by[start] = []
        waiting = [(0, 0, start)]
        met = 1
        while waiting:
            cost, _, pair = heappop(waiting)
            if self.cheapest is not None and cost > self.cheapest:
                return
            if cost > self.cost_to[pair]:
                continue
            if self._ends_at(pair):
                self.cheapest = cost
                self.ends.append(pair)
            for there, price, _ in self.ways(pair):
                if self._comes_to(there, cost + price, pair):
                    heappush(waiting, (cost + price, met, there))
                    met += 1

    def ways(
        self, pair: tuple[Node, int]
    ) -> Iterator[tuple[tuple[Node, int], int, Onward[Node, Doing] | None]]:
        """Yield where each move leads and its price, those preferred first; None is a log move."""
        node, event = pair
        onward = list(self.net.onward(node, event))
        for way in sorted(onward, key=lambda way: way.taken is None):
            price = sum(map(self.costs.left_out, way.left_out))
            yield (way.to, event + (way.taken is not None)), price, way
        if event < self.length:
            yield (node, event + 1), self.costs.besides(event), None

    def _ends_at(self, pair: tuple[Node, int]) -> bool:
        return pair[1] == self.length and self.net.may_end(pair[0])

    def _comes_to(self, there: tuple[Node, int], cost: int, pair: tuple[Node, int]) -> bool:
        known = self.cost_to.get(there)
        if known is None or cost < known:
            self.cost_to[there] = cost
            self.came_by[there] = [pair]
            return True
        if cost == known:
            self.came_by[there].append(pair)
        return False

    def on_cheapest(self) -> set[tuple[Node, int]]:
        """Return every pair on a cheapest way to an end."""
        found = set(self.ends)
        waiting = list(self.ends)
        while waiting:
            for before in self.came_by[waiting.pop()]:
                if before not in found:
                    found.add(before)
                    waiting.append(before)
        return found


def cheapest(net: Net[Node, Doing], length: int, costs: Costs[Doing]) -> Alignment[Node, Doing]:
    """Return the cheapest alignment of a run of some length. Raises `NoEndError`."""
    search = _Search(net, length, costs)
    search.run()
    if search.cheapest is None:
        raise NoEndError("the model has no end that can be come to")
    good, ends = search.on_cheapest(), set(search.ends)
    pair = (net.first, 0)
    moves: list[Move[Doing]] = []
    while pair not in ends:
        pair, made = _preferred(search, good, pair)
        moves += made
    return Alignment(tuple(moves), search.cheapest, pair[0])


def _preferred(
    search: _Search[Node, Doing], good: set[tuple[Node, int]], pair: tuple[Node, int]
) -> tuple[tuple[Node, int], list[Move[Doing]]]:
    cost, event = search.cost_to[pair], pair[1]
    for there, price, way in search.ways(pair):
        if there in good and search.cost_to[there] == cost + price:
            if way is None:
                return there, [Move(Kind.LOG, event, None)]
            made: list[Move[Doing]] = [Move(Kind.MODEL, None, each) for each in way.left_out]
            if way.taken is not None:
                made.append(Move(Kind.SYNCHRONOUS, event, way.taken))
            return there, made
    raise AssertionError("a cheapest way goes on to its end")
