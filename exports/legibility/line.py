"""How wide a column of type may be, so that a line stays short enough to find the next one."""

from __future__ import annotations

MEASURE = 11.5
"""Millimetres of width for each point of size: at most some 75 letters a line."""


def widest(size: float) -> float:
    """Return the width in millimetres beyond which lines of type in points grow too long.

    >>> widest(10)
    115.0
    """
    return MEASURE * size
