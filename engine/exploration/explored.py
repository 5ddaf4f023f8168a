"""What an exploration found: the states by number, and the way to each."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import TypeAlias

from chamberwise.engine.exploration.program import DONE, Program
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.step import PathwayId, StepId

Parent: TypeAlias = tuple[int, str | None, "Inside"]
"""The state before, the move made there, and what was walked inside a handover before this."""

Inside: TypeAlias = int | Parent | None
"""The state over there that it came back from, or the handover over there that went for good."""


@dataclass(slots=True)
class Seen:
    """Of all states at one node: the bits some leaves possible, those some rules out, whether a

    question is ever put there and, where that was looked for, whether a branch has no way.
    """

    possible: int = 0
    ruled_out: int = 0
    asked: bool = False
    undecided: bool = False

    def with_more(self, other: Seen) -> Seen:
        """Return what is true of both together."""
        return Seen(
            self.possible | other.possible,
            self.ruled_out | other.ruled_out,
            self.asked or other.asked,
            self.undecided or other.undecided,
        )


@dataclass(slots=True)
class Explored:
    """The states found, by number. `leaves` marks those where the stretch is left or ends.

    `stopped` is true when there were more states than the limit: then nothing is proved.
    """

    program: Program
    nodes: list[int] = field(default_factory=list)
    bits: list[int] = field(default_factory=list)
    parents: list[Parent] = field(default_factory=list)
    leads_to: list[list[int]] = field(default_factory=list)
    leaves: list[bool] = field(default_factory=list)
    stopped: bool = False
    seen: dict[int, Seen] = field(default_factory=dict)
    """By node, what is true of all states there together."""
    undecided: list[int] = field(default_factory=list)
    """States at a branch that has no way for what is known."""

    def __len__(self) -> int:
        return len(self.nodes)

    def at_node(self, state: int) -> Place:
        """Return the step a state is at."""
        return self.program.nodes[self.nodes[state]].place

    def seen_in(self, pathway: PathwayId) -> Iterator[tuple[StepId, Seen]]:
        """Yield the steps of a pathway that some walk comes to, with what is true there."""
        for node, seen in self.seen.items():
            place = self.program.nodes[node].place
            if place.pathway == pathway:
                yield place.step, seen

    def way_to(self, state: int) -> list[tuple[Place, str]]:
        """Return the moves of a walk to a state: at which step, which move."""
        return self._since(state, 0)

    def _since(self, state: int, first: int) -> list[tuple[Place, str]]:
        legs: list[list[tuple[Place, str]]] = []
        while state != first:
            before, move, inside = self.parents[state]
            legs.append(self._inside(inside))
            if move is not None:
                legs.append([(self.at_node(before), move)])
            state = before
        return [step for leg in reversed(legs) for step in leg]

    def _inside(self, inside: Inside) -> list[tuple[Place, str]]:
        if inside is None:
            return []
        if isinstance(inside, int):
            return self._since(inside, self._first_of(inside))
        handover, _, deeper = inside
        way = self._since(handover, self._first_of(handover))
        return [*way, (self.at_node(handover), DONE), *self._inside(deeper)]

    def _first_of(self, state: int) -> int:
        """Return the first state of the stretch a state belongs to."""
        pathway = self.at_node(state).pathway
        while self.at_node(self.parents[state][0]).pathway == pathway and state:
            state = self.parents[state][0]
        return state


def trapped(found: Explored) -> Iterator[int]:
    """Yield every state from which the stretch can never be left."""
    before: list[list[int]] = [[] for _ in found.nodes]
    for state, targets in enumerate(found.leads_to):
        for target in targets:
            before[target].append(state)
    is_free = list(found.leaves)
    free = [state for state, leaves in enumerate(is_free) if leaves]
    while free:
        for earlier in before[free.pop()]:
            if not is_free[earlier]:
                is_free[earlier] = True
                free.append(earlier)
    return (state for state, out in enumerate(is_free) if not out)
