"""The spots of a program: every node with the handovers to come back to, and the arrows between."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

from chamberwise.engine.exploration.program import Program
from chamberwise.engine.model.step import Outcome

Spot: TypeAlias = int
"""A node, plus as many times the number of nodes as the handovers to come back to have as number.

While there is no handover to come back to, a spot is its node.
"""

FIRST: Spot = 0


@dataclass(slots=True)
class Spots:
    """Every spot there is, whatever is known or counted."""

    program: Program
    size: int
    """How many nodes there are."""
    stacks: list[tuple[int, ...]] = field(default_factory=lambda: [()])
    """The handovers to come back to, outermost first, by number."""
    number_of: dict[tuple[int, ...], int] = field(default_factory=lambda: {(): 0})
    arrows: dict[Spot, Sequence[Spot]] = field(default_factory=dict)

    def node(self, spot: Spot) -> int:
        """Return the node of a spot."""
        return spot % self.size

    def onto(self, spot: Spot) -> Spot:
        """Return what to add to a node to which the handover at a spot leads."""
        node = spot % self.size
        if not self.program.calls[node].back:
            return 0
        stack = (*self.stacks[spot // self.size], node)
        number = self.number_of.get(stack)
        if number is None:
            number = self.number_of[stack] = len(self.stacks)
            self.stacks.append(stack)
        return number * self.size

    def back(self, spot: Spot) -> tuple[int, Spot] | None:
        """Return the handover that an outcome may come back to, and what to add to nodes there."""
        stack = self.stacks[spot // self.size]
        if not stack:
            return None
        return stack[-1], self.number_of[stack[:-1]] * self.size


def spots_of(program: Program) -> Spots:
    """Return every spot that arrows lead to from the first, with those arrows."""
    spots = Spots(program, len(program.nodes))
    arrows = spots.arrows
    waiting = [FIRST]
    while waiting:
        spot = waiting.pop()
        if spot not in arrows:
            arrows[spot] = onward = _onward(spots, spot)
            waiting += onward
    return spots


def rings(spots: Spots) -> list[list[Spot]]:
    """Return the spots by rings: those from which arrows lead to each other and back.

    Arrows lead from a ring to later ones alone, and most spots are a ring of their own. Within a
    ring arrows lead forward, but for those that close a loop. (Gabow's search in depth.)
    """
    arrows, number, ring_of = spots.arrows, {FIRST: 0}, dict[Spot, int]()
    path, ahead = [FIRST], [iter(arrows[FIRST])]
    unsettled, bounds, left = [FIRST], [FIRST], list[Spot]()
    while path:
        for target in ahead[-1]:
            if target not in number:
                number[target] = len(number)
                path.append(target)
                ahead.append(iter(arrows[target]))
                unsettled.append(target)
                bounds.append(target)
                break
            if target not in ring_of:
                while number[bounds[-1]] > number[target]:
                    bounds.pop()
        else:
            ahead.pop()
            left.append(path.pop())
            if bounds[-1] == left[-1]:
                _settle(unsettled, bounds.pop(), ring_of)
    return _in_order(left, ring_of)


def _settle(unsettled: list[Spot], first: Spot, ring_of: dict[Spot, int]) -> None:
    """Put the spots met from the first of a ring on into that ring."""
    ring = len(ring_of)
    while True:
        spot = unsettled.pop()
        ring_of[spot] = ring
        if spot == first:
            return


def _in_order(left: list[Spot], ring_of: dict[Spot, int]) -> list[list[Spot]]:
    """Return the rings, the last settled first, each with the spots last left first."""
    found: dict[int, list[Spot]] = {}
    for spot in reversed(left):
        found.setdefault(ring_of[spot], []).append(spot)
    return [found[ring] for ring in sorted(found, reverse=True)]


def before(spots: Spots) -> dict[Spot, list[Spot]]:
    """Return the spots from which arrows lead to each."""
    found: dict[Spot, list[Spot]] = {spot: [] for spot in spots.arrows}
    for spot, targets in spots.arrows.items():
        for target in targets:
            found[target].append(spot)
    return found


def _onward(spots: Spots, spot: Spot) -> Sequence[Spot]:
    program, node = spots.program, spot % spots.size
    call = program.calls.get(node)
    if call is not None:
        onto = spots.onto(spot)
        return [onto + target for target in call.enter.leads_to]
    if spot == node:
        return program.nodes[node].leads_to
    at = program.nodes[node]
    if isinstance(at.step, Outcome):
        return _backward(spots, spot, at.place.step)
    return [spot - node + target for target in at.leads_to]


def _backward(spots: Spots, spot: Spot, outcome: str) -> Sequence[Spot]:
    back = spots.back(spot)
    assert back
    handover, base = back
    enter = spots.program.calls[handover].back.get(outcome)
    return [base + target for target in enter.leads_to] if enter else ()
