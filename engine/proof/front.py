"""The states that wait at one spot, by what is known and counted there."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeAlias

Front: TypeAlias = dict[int, int]
"""By what is known, the number of the set of states of machines that walks bring along."""


def far_apart(front: Front, wanted: int) -> Front:
    """Return about as many states as are wanted, spread over what is known and counted.

    At least as many, where there are so many, and fewer than twice as many.
    """
    if len(front) <= wanted:
        return front
    apart = len(front) // wanted
    return {bits: front[bits] for bits in sorted(front)[apart - 1 :: apart]}


def with_some_of_each(front: Front, rows: Sequence[Sequence[int]]) -> Front:
    """Return those that have, for some row, some bits of each of its masks."""
    return {
        bits: number
        for bits, number in front.items()
        if any(all(bits & mask for mask in row) for row in rows)
    }
