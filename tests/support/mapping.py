"""From states of `advance` to states of an exploration.

An exploration forgets what is dead, and inside a pathway that comes back it keeps only what that
pathway looks at. Two states are the same to an exploration when they agree on the rest.
"""

from __future__ import annotations

from functools import cached_property

from chamberwise.engine.exploration.explore import explore
from chamberwise.engine.exploration.explored import Explored
from chamberwise.engine.exploration.frame import frames
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.library import Library, Place

Edge = tuple[str | None, int]
"""The name of a move, `None` where none is needed, and the explored state it leads to."""


class Map:
    """An exploration that can be asked where a state lies in it."""

    def __init__(self, library: Library, pathway: str) -> None:
        self.library = library
        self.pathway = pathway
        self.found: Explored = explore(library, pathway)
        self.program = self.found.program
        self.frames = frames(self.program)

    @cached_property
    def _at(self) -> dict[int, list[int]]:
        """Return the explored states at each node."""
        numbers: dict[int, list[int]] = {}
        for number, node in enumerate(self.found.nodes):
            numbers.setdefault(node, []).append(number)
        return numbers

    def covers(self, state: State) -> bool:
        """Whether some explored state is this one."""
        node = self.program.index.get(state.place)
        return node is not None and any(self.agree(each, state) for each in self._at.get(node, ()))

    def agree(self, number: int, state: State) -> bool:
        """Whether an explored state is this one, in all that matters there."""
        node = self.program.nodes[self.found.nodes[number]]
        if node.place != state.place:
            return False
        looked_at = node.live & self._kept(state)
        bits = self.found.bits[number]
        if not state.way_back and state.place.pathway != self.pathway:
            looked_at &= ~self._wide_open(bits)
        return (self._bits(state) ^ bits) & looked_at == 0

    def _wide_open(self, bits: int) -> int:
        """Return the findings of which nothing is known.

        Before a handover for good they may have been forgotten, as dead in that walk: they are live
        over there only for walks that come back.
        """
        layout = self.program.layout
        tables = (layout.shared, *layout.own.values())
        every_field = [field.every for fields in tables for field in fields.values()]
        return sum(every for every in every_field if bits & every == every)

    def _kept(self, state: State) -> int:
        counts = sum(
            counter.mask
            for place, counter in self.program.counters.items()
            if place.pathway == state.place.pathway
        )
        if not state.way_back:
            return self.program.layout.every | counts
        return self.frames[state.place.pathway].reads | counts

    def _bits(self, state: State) -> int:
        bits = state.possible
        for place, times in state.entered:
            if place in self.program.counters:
                bits |= times << self.program.counters[place].shift
        return bits

    def edges(self, number: int) -> list[Edge]:
        """Return every move of an explored state that is not a handover, and where it leads."""
        node = self.program.nodes[self.found.nodes[number]]
        names = [name for name, _, _ in node.onward(self.found.bits[number])]
        return list(zip(names, self.found.leads_to[number], strict=True)) if names else []

    def settled(self, number: int) -> int | None:
        """Return where silent edges end; `None` where they go round."""
        met = {number}
        while True:
            edges = self.edges(number)
            if not edges or edges[0][0] is not None:
                return number
            number = edges[0][1]
            if number in met:
                return None
            met.add(number)

    def place(self, number: int) -> Place:
        return self.found.at_node(number)
