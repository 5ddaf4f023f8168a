"""From move to move over integers, for many walks of the table at once.

`meaning.advance` is the definition; property tests hold this to it by way of `run_case`. What can
no longer be read is forgotten, so that walks which differ in it alone go on as one.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeAlias

from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.exploration.liveness import mark_live
from chamberwise.engine.exploration.program import Next, Program
from chamberwise.engine.meaning.layout import Field
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Outcome, PathwayId, Question

Stack: TypeAlias = tuple[int, ...]
Position: TypeAlias = tuple[int, Stack, int]
"""A node, the handovers to come back to, and the bits of what is known and counted."""

MOST_SILENT = 100_000


class Stepping:
    """The steps of a pathway and of all it hands over to; of some fields it knows if stale."""

    def __init__(self, library: Library, pathway: PathwayId, tracked: Iterable[Field] = ()) -> None:
        self.program: Program = compiled(library, pathway, tracked)
        for node in self.program.nodes:
            if isinstance(node.step, Question):
                asked = self.program.layout.field(node.place.pathway, node.step.ask)
                node.reads |= self.stale_bit(asked.every)
        mark_live(self.program)
        findings = self.program.layout.every
        self._live = [(node.live, findings & ~node.live) for node in self.program.nodes]

    def stale_bit(self, every: int) -> int:
        """Return the bit that says a field is stale, 0 for one not tracked."""
        return self.program.tracked.get(every, 0)

    def first(self, bits: int, passed: list[int]) -> Position:
        """Return where a walk first stands that begins knowing `bits`."""
        counter = self.program.counters.get(self.program.nodes[0].place)
        return self.settled((0, (), bits + (1 << counter.shift if counter else 0)), passed)

    def moves(self, position: Position) -> list[Next]:
        """Return what can be done, with where it leads before that has settled.

        A handover has one move. There is none at an outcome and at an undecided branch.
        """
        place, _, bits = position
        call = self.program.calls.get(place)
        if call is None:
            return self.program.nodes[place].onward(bits)
        return [("done", *call.enter(bits))]

    def made(self, position: Position, move: Next, passed: list[int]) -> Position:
        """Return where a walk stands next after a move."""
        place, stack, _ = position
        _, there, after = move
        call = self.program.calls.get(place)
        if call is not None:
            stack = (*stack, place) if call.back else ()
        return self.settled((there, stack, after), passed)

    def settled(self, position: Position, passed: list[int]) -> Position:
        """Follow what needs no move; nodes come by are added to `passed`, the last too."""
        place, stack, bits = position
        nodes = self.program.nodes
        for _ in range(MOST_SILENT):
            kept, dead = self._live[place]
            bits = bits & kept | dead
            passed.append(place)
            onward = nodes[place].onward(bits)
            if onward and onward[0][0] is None:
                _, place, bits = onward[0]
            elif not onward and stack and (back := self._back(place, stack, bits)):
                place, stack, bits = back
            else:
                break
        return place, stack, bits

    def _back(self, place: int, stack: Stack, bits: int) -> Position | None:
        node = self.program.nodes[place]
        if not isinstance(node.step, Outcome):
            return None
        enter = self.program.calls[stack[-1]].back.get(node.place.step)
        if enter is None:
            return None
        there, after = enter(bits)
        return there, stack[:-1], after
