"""States as single integers: the bits of what is known and, above them, where that is.

Most moves turn the key of a state into the next by `key & keep | add`, what is forgotten included.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeAlias

from chamberwise.engine.exploration.program import Node, Program
from chamberwise.engine.model.step import Action, Handover, Question
from chamberwise.engine.proof.shots import ShotAt

Stack: TypeAlias = int
"""The handovers to come back to, by a number; 0 for none."""

SpotNumber: TypeAlias = int
"""A node with the handovers to come back to; from 1 on, so that no key is 0."""

Key: TypeAlias = int
"""The number of a spot above the bits of what is known."""

Move: TypeAlias = tuple[int, int, int, int, int]
"""Of a move the bits of which one must be set in the key, `keep` and `add`, the bits that, all set

in the key led to, say that a move is due there, and the node led to.
"""

Laid: TypeAlias = "tuple[ShotAt, list[Move] | None]"
"""The shot of all moves at a spot, and the moves; none where they have to be made by hand."""


class Keys:
    """How the states of a program are put into keys. What is live has to be marked before."""

    def __init__(self, program: Program) -> None:
        self._nodes = program.nodes
        self.width = program.width
        self.every = (1 << program.width) - 1
        findings = program.layout.every
        self._live = [(node.live & self.every, findings & ~node.live) for node in program.nodes]
        self.due = [_stands(node) for node in program.nodes]

    def key(self, place: int, stack: Stack, bits: int) -> Key:
        """Return the key of a node with some bits, but for those that can no longer be read."""
        live, dead = self._live[place]
        return self.spot(place, stack) << self.width | bits & live | dead

    def spot(self, place: int, stack: Stack) -> SpotNumber:
        """Return the number of a spot."""
        return stack * len(self._live) + place + 1

    def apart(self, spot: SpotNumber) -> tuple[Stack, int]:
        """Return the handovers to come back to, and the node, of a spot."""
        return divmod(spot - 1, len(self._live))

    def place(self, key: Key) -> int:
        """Return the node of a key."""
        return ((key >> self.width) - 1) % len(self._live)

    def laid(self, spot: SpotNumber, shot_at: Sequence[ShotAt]) -> Laid:
        """Put the moves at a spot into integers."""
        stack, place = self.apart(spot)
        node, shot = self._nodes[place], shot_at[place]
        varies = node.asked and not isinstance(shot, int)
        if varies or not node.ways:
            return shot, None
        moves: list[Move] = []
        mine = spot << self.width
        for _, needs, keep, add, enter in node.ways:
            behind = None if enter.chain else self._behind(enter.last)
            if behind is None:
                return shot, None
            for there in behind:
                live, dead = self._live[there]
                into = self.spot(there, stack) << self.width | dead | add & live
                moves.append((needs or mine, keep & live, into, self.due[there], there))
        return shot, moves

    def _behind(self, place: int) -> Sequence[int] | None:
        """Return a node, or the nodes behind it where it is a door; `None` where counts decide."""
        nodes = self._nodes
        if not nodes[place].is_door:
            return (place,)
        behind = [place]
        for there in behind:  # grows while it is gone through
            if nodes[there].is_door:
                if nodes[there].reads:
                    return None
                behind += [each for each in nodes[there].leads_to if each not in behind]
        return [there for there in behind if not nodes[there].is_door]


def _stands(node: Node) -> int:
    """Return bits that, all set in a key, say that a move is due; all bits there are: never."""
    if node.is_cut_off:
        return -1
    if isinstance(node.step, Action | Handover) and not node.is_door:
        return 0
    return node.asked if isinstance(node.step, Question) and not node.is_door else -1
