"""One of two versions while they are walked side by side: where a walk stands, and its moves.

The compiled form of `meaning.advance`, with what can no longer be read forgotten. With bounds
left open, a bounded step has a door before it, at which a walk goes in or takes the exit.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TypeAlias

from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.exploration.liveness import mark_live
from chamberwise.engine.exploration.program import DONE, Call, Node, Program
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Branch, Outcome, PathwayId, Question

MOST_TURNS = 1_000

Position: TypeAlias = tuple[int, tuple[int, ...], int]
"""A node, the handovers to come back to, and the bits of what is known and counted."""

Onward: TypeAlias = tuple[tuple[str, Position], ...]


@dataclass(slots=True)
class Side:
    """One version; each position met so far is kept with the moves from it."""

    program: Program
    first: Position = (0, (), 0)
    kept: dict[Position, Onward] = field(default_factory=dict)
    counts: dict[PathwayId, int] = field(default_factory=dict)

    def node(self, position: Position) -> Node:
        """Return the node a walk stands at."""
        return self.program.nodes[position[0]]

    def onward(self, position: Position) -> Onward:
        """Return the moves from a position by name, and where each leads."""
        found = self.kept.get(position)
        if found is None:
            found = tuple((name, self.settled(to)) for name, to in self._moves(position))
            self.kept[position] = found
        return found

    def settled(self, position: Position) -> Position:
        """Return where a walk stands once all is done that needs no move."""
        for _ in range(MOST_TURNS):
            silently = self._silently(position)
            if silently is None:
                break
            position = silently
        place, stack, bits = position
        live = self.program.nodes[place].live
        return place, stack, bits & live | self.program.layout.every & ~live

    def _moves(self, position: Position) -> list[tuple[str, Position]]:
        place, stack, bits = position
        node = self.program.nodes[place]
        if node.is_door:
            (_, inside, within), (_, outside, beyond) = node.onward(bits)
            return [("enter", (inside, stack, within)), ("exit", (outside, stack, beyond))]
        call = self.program.calls.get(place)
        if call is not None:
            return [(DONE, self._over_there(call, position))]
        return [(name, (to, stack, after)) for name, to, after in node.onward(bits) if name]

    def _over_there(self, call: Call, position: Position) -> Position:
        place, stack, bits = position
        there, after = call.enter(bits & ~self._counts(call.pathway))
        return there, (*stack, place) if call.back else (), after

    def _silently(self, position: Position) -> Position | None:
        place, stack, bits = position
        node = self.program.nodes[place]
        if node.is_door or not isinstance(node.step, Question | Branch | Outcome):
            return None
        if isinstance(node.step, Outcome):
            return self._back(node, stack, bits)
        onward = node.onward(bits)
        if not onward or onward[0][0] is not None:
            return None
        return onward[0][1], stack, onward[0][2]

    def _back(self, node: Node, stack: tuple[int, ...], bits: int) -> Position | None:
        enter = self.program.calls[stack[-1]].back.get(node.place.step) if stack else None
        if enter is None:
            return None
        there, after = enter(bits & ~self._counts(node.place.pathway))
        return there, stack[:-1], after

    def _counts(self, pathway: PathwayId) -> int:
        if pathway not in self.counts:
            self.counts[pathway] = self.program.counts(pathway)
        return self.counts[pathway]


def side(library: Library, pathway: PathwayId, *, counted: bool) -> Side:
    """Return one version, standing at its entry; with bounds counted, or left open."""
    uncounted = frozenset() if counted else _bounded(library)
    program = compiled(library, pathway, uncounted=uncounted)
    mark_live(program)
    counter = program.counters.get(program.nodes[0].place)
    first = program.first_bits + (1 << counter.shift if counter else 0)
    made = Side(program)
    made.first = made.settled((0, (), first))
    return made


def _bounded(library: Library) -> frozenset[Place]:
    return frozenset(
        Place(name, step.id)
        for name, pathway in library.pathways.items()
        for step in pathway.steps.values()
        if step.bound
    )
