"""The colours that everybody reads as a signal."""

from __future__ import annotations

from collections.abc import Iterator
from enum import StrEnum
from typing import NamedTuple

from chamberwise.exports.audit.block import Block
from chamberwise.exports.audit.colour.vision import hue
from chamberwise.exports.audit.flow import box_of
from chamberwise.exports.audit.inked import is_colourful
from chamberwise.exports.audit.rule import Where
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Shape


class Signal(StrEnum):
    """A colour with a meaning of its own."""

    RED = "red"
    YELLOW = "yellow"
    GREEN = "green"


HUES = {Signal.RED: (5, 50), Signal.YELLOW: (60, 110), Signal.GREEN: (120, 185)}
"""Degrees of CIE Lab hue, from and to; ours."""


class Signalled(NamedTuple):
    """A shape whose ground is a signal, and the words in it."""

    signal: Signal
    shape: Shape
    words: tuple[Block, ...]
    where: Where


def signal_of(colour: str) -> Signal | None:
    """Return which signal a colour is; `None` for others and for greys.

    >>> signal_of("#a31515")
    <Signal.RED: 'red'>
    """
    if not is_colourful(colour):
        return None
    found = hue(colour)
    return next((each for each, (low, high) in HUES.items() if low <= found <= high), None)


def signalled(subject: Subject) -> Iterator[Signalled]:
    """Yield every shape with a ground that is a signal."""
    for side in subject.sides:
        for item in side.page.items:
            if isinstance(item, Shape) and item.ground is not Ink.CLEAR:
                signal = signal_of(item.ground.value)
                if signal:
                    box = box_of(item)
                    inside = tuple(each for each in side.blocks if box.holds(each.box.centre))
                    yield Signalled(signal, item, inside, Where(side.number, item.x, item.y))
