"""Leaving out what comes after everything that rules speak of.

Where rules only forbid, a walk that can never again show what they speak of is settled: nothing
beyond has to be looked at, nor remembered for it.
"""

from __future__ import annotations

from chamberwise.engine.exploration.program import Program
from chamberwise.engine.proof.spots import Spots, leading_to


def prune(program: Program, spots: Spots, speaking: frozenset[int]) -> None:
    """Cut off every node from which no arrows lead to one of the speaking nodes."""
    needed = {spots.node(spot) for spot in leading_to(spots, speaking)}
    for number, node in enumerate(program.nodes):
        if number not in needed:
            node.cut_off()
            program.calls.pop(number, None)
