"""Draws that lie far apart for seeds in a row, so that ten drills in a row are ten different ones.

Additive recurrence by the golden ratio: of any so many seeds in a row each share of the weights is
met nearly as often as it should be (Weyl's equidistribution; the constant is 2^64 over the golden
ratio). What has no weights goes round in shuffled turns: nothing comes again before all have come.
"""

from __future__ import annotations

from collections.abc import Sequence
from random import Random
from typing import TypeVar

_T = TypeVar("_T")
_STEP = 0x9E3779B97F4A7C15
_WHOLE = 1 << 64


def spread(seed: int, salt: str) -> float:
    """Return a number from 0 to below 1; for seeds in a row they lie far apart.

    >>> near = [spread(seed, "a") for seed in range(5)]
    >>> min(abs(a - b) for a in near for b in near if a is not b) > 0.1
    True
    """
    offset = Random(salt).getrandbits(64)
    return ((seed * _STEP + offset) % _WHOLE) / _WHOLE


def weighted(weights: Sequence[int], at: float) -> tuple[int, float]:
    """Return which share a number from 0 to 1 falls into, and where in it, from 0 to below 1.

    >>> weighted([1, 3], 0.5)
    (1, 0.3333333333333333)
    """
    rest = at * sum(weights)
    for place, weight in enumerate(weights):
        if rest < weight:
            return place, rest / weight
        rest -= weight
    return len(weights) - 1, 0.0


def in_turn(of: Sequence[_T], seed: int, salt: str) -> _T:
    """Return one of several, each once before any comes again in a row of seeds.

    >>> sorted(in_turn("abcd", seed, "x") for seed in range(4, 8))
    ['a', 'b', 'c', 'd']
    """
    turn, place = divmod(seed, len(of))
    order = list(range(len(of)))
    Random(f"{salt}/{turn}").shuffle(order)
    return of[order[place]]
