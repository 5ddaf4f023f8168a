"""The largest size at which something fits."""

from __future__ import annotations

from collections.abc import Callable


def most(fits: Callable[[int], bool], low: int, high: int) -> int:
    """Return the most steps of size that fit, from `low` to `high`; `low - 1` where none do.

    What fits at a size has to fit at every smaller one.

    >>> most(lambda steps: steps <= 7, 1, 20)
    7
    """
    while low <= high:
        middle = (low + high) // 2
        if fits(middle):
            low = middle + 1
        else:
            high = middle - 1
    return high
