"""Leaving out what comes after everything that rules speak of.

Where rules only forbid, a walk that can never again show what they speak of is settled: nothing
beyond has to be looked at, nor remembered for it.
"""

from __future__ import annotations

from collections.abc import Iterable

from chamberwise.engine.exploration.program import Program
from chamberwise.engine.proof.spots import Arrows, Spot


def prune(program: Program, spots: Arrows, speaking: frozenset[int]) -> None:
    """Cut off every node from which no arrows lead to one of the speaking nodes."""
    needed = {node for _, node in _leading_to(spots, speaking)}
    for number, node in enumerate(program.nodes):
        if number not in needed:
            node.cut_off()
            program.calls.pop(number, None)


def _leading_to(spots: Arrows, speaking: Iterable[int]) -> set[Spot]:
    before: dict[Spot, list[Spot]] = {spot: [] for spot in spots}
    for spot, targets in spots.items():
        for target in targets:
            before[target].append(spot)
    found = {spot for spot in spots if spot[1] in set(speaking)}
    waiting = list(found)
    while waiting:
        for spot in before[waiting.pop()]:
            if spot not in found:
                found.add(spot)
                waiting.append(spot)
    return found
