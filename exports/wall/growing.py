"""First actions, and then their tasks, as large as there is room for."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import ceil

from chamberwise.exports.typesetting.searching import most
from chamberwise.exports.wall.pen import Pen

GROWTH = 0.1
"""Body sizes by which they grow at a time."""
TITLED = 1.6
"""Times its tasks: the least size of a first action where tasks grow alone."""


def grown(pen: Pen, limit: float, fits: Callable[[Pen], bool]) -> Pen:
    """Return a pen that fits with its first actions made larger, up to so many body sizes."""

    def larger(steps: int) -> Pen:
        return replace(pen, glance=min(pen.glance + steps * GROWTH, limit))

    steps = most(lambda tried: fits(larger(tried)), 1, ceil((limit - pen.glance) / GROWTH))
    return larger(steps) if steps > 0 else pen


def grown_tasks(pen: Pen, fits: Callable[[Pen], bool]) -> Pen:
    """Return a pen that fits with tasks made larger, as long as the first actions stand out."""

    def larger(steps: int) -> Pen:
        return replace(pen, task=pen.task + steps * GROWTH)

    limit = int((pen.glance / TITLED - pen.task) / GROWTH)
    steps = most(lambda tried: fits(larger(tried)), 1, limit) if limit > 0 else 0
    return larger(steps) if steps > 0 else pen


def aired(pen: Pen, fits: Callable[[Pen], bool]) -> Pen:
    """Return a pen that fits with more air between the tasks."""

    def looser(steps: int) -> Pen:
        return replace(pen, air=pen.air + steps * GROWTH)

    steps = most(lambda tried: fits(looser(tried)), 1, ceil(pen.task / GROWTH))
    return looser(steps) if steps > 0 else pen
