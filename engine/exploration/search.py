"""Going from state to state. A pathway that a handover comes back from is gone through once for

each way of entering it, and its results are used wherever it is entered so.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import TypeAlias

from chamberwise.engine.exploration.explored import Explored, Parent, Seen
from chamberwise.engine.exploration.frame import Frame
from chamberwise.engine.exploration.program import DONE, Call, Node
from chamberwise.engine.exploration.wanted import go_on_if_wanted
from chamberwise.engine.model.step import Branch, Handover, Outcome, PathwayId, StepId

A_WHILE = 512
"""After how many states it is asked whether anybody still waits."""

Effect: TypeAlias = tuple[int, int]
"""`keep` and `add`: bits become `bits & keep | add`."""


@dataclass(slots=True)
class Stretch:
    """Steps walked from one way of entering, the outermost to the end: its states, its exits.

    Each exit is told once, with its effect on the bits it was entered with and the state there.
    """

    frame: Frame | None = None
    known: dict[tuple[int, int], int] = field(default_factory=dict)
    outcomes: dict[tuple[StepId, Effect], int] = field(default_factory=dict)
    for_good: dict[tuple[int, Effect], Parent] = field(default_factory=dict)
    """By the node of a handover that does not come back."""


class Search:
    """One exploration under way."""

    def __init__(self, found: Explored, frames_of: dict[PathwayId, Frame], most: int) -> None:
        self.found = found
        self.frames = frames_of
        self.most = most
        self.inner: dict[tuple[int, int], Stretch] = {}
        findings = found.program.layout.every
        self.live = [(node.live, findings & ~node.live) for node in found.program.nodes]

    def walk(self, stretch: Stretch, node: int, bits: int, by: Parent) -> None:
        """Meet every state of a stretch, nearest first."""
        found, nodes = self.found, self.found.program.nodes
        waiting: list[int] = []
        self._meet(stretch, waiting, node, bits, by)
        for state in waiting:
            if state % A_WHILE == 0:
                go_on_if_wanted()
            if len(found.nodes) >= self.most:
                found.stopped = True
                return
            place = found.nodes[state]
            at = nodes[place]
            onward = at.onward(found.bits[state])
            found.leads_to[state] = [
                self._meet(stretch, waiting, there, after, (state, move, None))
                for move, there, after in onward
            ]
            if len(onward) > 1 or (onward and onward[0][0] is not None):
                found.seen[place].asked = True
            elif not onward:
                self._leave(stretch, waiting, at, state)

    def _meet(self, stretch: Stretch, waiting: list[int], node: int, bits: int, by: Parent) -> int:
        live, dead = self.live[node]
        bits = bits & live | dead
        key = (node, bits)
        known = stretch.known
        if key in known:
            return known[key]
        found = self.found
        state = known[key] = len(found.nodes)
        found.nodes.append(node)
        found.bits.append(bits)
        found.parents.append(by)
        found.leads_to.append([])
        found.leaves.append(False)
        waiting.append(state)
        seen = found.seen.get(node) or found.seen.setdefault(node, Seen())
        seen.possible |= bits
        seen.ruled_out |= ~bits
        return state

    def _leave(self, stretch: Stretch, waiting: list[int], node: Node, state: int) -> None:
        """Go on from a state without a move of its own: a handover, an outcome, or a dead end."""
        found = self.found
        if isinstance(node.step, Handover):
            call = found.program.calls[found.nodes[state]]
            found.leads_to[state] = list(self._hand_over(stretch, waiting, call, state))
        elif isinstance(node.step, Outcome):
            found.leaves[state] = True
            if stretch.frame:
                exit_by = node.place.step, stretch.frame.effect(found.bits[state])
                stretch.outcomes.setdefault(exit_by, state)
        elif isinstance(node.step, Branch):
            found.undecided.append(state)

    def _hand_over(
        self, stretch: Stretch, waiting: list[int], call: Call, state: int
    ) -> Iterator[int]:
        bits = self.found.bits[state]
        if not call.back:
            node = self.found.nodes[state]
            yield from self._go_for_good(stretch, waiting, node, bits, (state, DONE, None))
            return
        over_there = self._over_there(call, state)
        for (outcome, (keep, add)), end in over_there.outcomes.items():
            enter = call.back.get(outcome)
            if enter is None:
                self.found.leaves[state] = True
            else:
                node, after = enter(bits & keep | add)
                yield self._meet(stretch, waiting, node, after, (state, DONE, end))
        for (onward, (keep, add)), left_at in over_there.for_good.items():
            by: Parent = (state, DONE, left_at)
            yield from self._go_for_good(stretch, waiting, onward, bits & keep | add, by)

    def _over_there(self, call: Call, state: int) -> Stretch:
        frame = self.frames[call.pathway]
        node, bits = call.enter(self.found.bits[state] & frame.reads)
        live, dead = self.live[node]
        bits = bits & live | dead
        stretch = self.inner.get((node, bits))
        if stretch is None:
            stretch = self.inner[node, bits] = Stretch(frame)
            self.walk(stretch, node, bits, (state, DONE, None))
        return stretch

    def _go_for_good(
        self, stretch: Stretch, waiting: list[int], handover: int, bits: int, by: Parent
    ) -> Iterator[int]:
        if stretch.frame is None:
            call = self.found.program.calls[handover]
            node, bits = call.enter(bits & self.found.program.layout.every)
            yield self._meet(stretch, waiting, node, bits, by)
        else:
            self.found.leaves[by[0]] = True
            stretch.for_good.setdefault((handover, stretch.frame.effect(bits)), by)
