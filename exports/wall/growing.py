"""First actions as large as there is room for."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import ceil

from chamberwise.exports.typesetting.searching import most
from chamberwise.exports.wall.pen import Pen

GROWTH = 0.1
"""Body sizes by which they grow at a time."""


def grown(pen: Pen, limit: float, fits: Callable[[Pen], bool]) -> Pen:
    """Return a pen that fits with its first actions made larger, up to so many body sizes."""

    def larger(steps: int) -> Pen:
        return replace(pen, glance=min(pen.glance + steps * GROWTH, limit))

    steps = most(lambda tried: fits(larger(tried)), 1, ceil((limit - pen.glance) / GROWTH))
    return larger(steps) if steps > 0 else pen
