"""States as single integers: the bits of what is known and, above them, where that is.

Most moves turn the key of a state into the next by `key & keep | add`, what is forgotten included.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeAlias

from chamberwise.engine.exploration.program import Entering, Node, Program
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

Turn: TypeAlias = tuple[int, int, int, int]
"""The same without the first, where no move has to be made."""

Passing: TypeAlias = tuple[
    Sequence[tuple[int, "Turn | None"]],
    Sequence[Sequence[int]],
    "Turn | None",
    "Turn | None",
]
"""The rows of a branch, each with the bits that must be gone and how a walk then goes on. By row

masks, of each of which one bit must be left for the row to be open. How a walk goes on otherwise,
and how where a row is open. There is no turn where counts are on the way.
"""

Laid: TypeAlias = "tuple[ShotAt, list[Move] | None]"
"""The shot of all moves at a spot, and the moves; none where they have to be made by hand."""


class Keys:
    """How the states of a program are put into keys, by what is live at each node."""

    def __init__(self, program: Program, live: Sequence[int]) -> None:
        self._nodes = program.nodes
        self.width = program.width
        self.every = (1 << program.width) - 1
        findings = program.layout.every
        self._live = [(bits & self.every, findings & ~bits) for bits in live]
        self.due = [_stands(node) for node in program.nodes]

    def key(self, place: int, stack: Stack, bits: int) -> Key:
        """Return the key of a node with some bits, but for those that can no longer be read."""
        live, dead = self._live[place]
        return self.spot(place, stack) << self.width | bits & live | dead

    def entered(self, place: int, stack: Stack) -> Turn:
        """Return how keys change that enter a node with nothing learnt."""
        live, dead = self._live[place]
        return live, self.spot(place, stack) << self.width | dead, self.due[place], place

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
            if enter.chain:
                return shot, None
            live, into, due, there = self.entered(enter.last, stack)
            moves.append((needs or mine, keep & live, add & live | into, due, there))
        return shot, moves

    def passing(self, spot: SpotNumber) -> Passing:
        """Put into integers how a branch, or a question that is known, is passed at a spot."""
        stack, place = self.apart(spot)
        node = self._nodes[place]
        if node.asked:
            known = [(node.asked & ~needs, enter) for _, needs, _, _, enter in node.ways if needs]
            return self._turns(known, stack), (), None, None
        rows = self._turns([(gone, enter) for gone, _, enter in node.rows], stack)
        otherwise, not_known = self._turn(node.otherwise, stack), self._turn(node.not_known, stack)
        masks = [tuple([mask for _, mask in terms]) for _, terms, _ in node.rows]
        return rows, () if otherwise == not_known else masks, otherwise, not_known

    def _turns(
        self, rows: Sequence[tuple[int, Entering]], stack: Stack
    ) -> list[tuple[int, Turn | None]]:
        return [(gone, self._turn(enter, stack)) for gone, enter in rows]

    def _turn(self, enter: Entering | None, stack: Stack) -> Turn | None:
        return None if enter is None or enter.chain else self.entered(enter.last, stack)


def _stands(node: Node) -> int:
    """Return bits that, all set in a key, say that a move is due; all bits there are: never."""
    if isinstance(node.step, Action | Handover):
        return 0
    return node.asked if isinstance(node.step, Question) else -1
