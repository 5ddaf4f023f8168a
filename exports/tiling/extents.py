"""The room that placed items take."""

from __future__ import annotations

from math import cos, radians, sin
from typing import NamedTuple

from chamberwise.exports.paper.sheet import Arrow, Code, Item, Text

HEAD = 5.0
"""The head of an arrow is at most so many times as wide as its line."""


class Box(NamedTuple):
    """A rectangle, in millimetres."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: Box) -> bool:
        """Whether two rectangles have more than an edge in common."""
        across = self.left < other.right and other.left < self.right
        return across and self.top < other.bottom and other.top < self.bottom


def box(item: Item) -> Box:
    """Return the rectangle around an item, its line's weight included."""
    match item:
        case Text():
            return _turned(item) if item.turned else _box(item.x, item.y, item.width, item.height)
        case Code():
            return _box(item.x, item.y, item.side, item.side)
        case Arrow():
            return _line(item)
        case _:
            half = item.weight / 2
            width, height = item.width + 2 * half, item.height + 2 * half
            return _box(item.x - half, item.y - half, width, height)


def _box(x: float, y: float, width: float, height: float) -> Box:
    return Box(x, y, x + width, y + height)


def _line(arrow: Arrow) -> Box:
    around = arrow.weight * (HEAD / 2 if arrow.has_head else 0.5)
    across, down = zip(*arrow.points, strict=True)
    return Box(min(across) - around, min(down) - around, max(across) + around, max(down) + around)


def _turned(text: Text) -> Box:
    """Turning is about the middle."""
    angle = radians(text.turned)
    width = abs(text.width * cos(angle)) + abs(text.height * sin(angle))
    height = abs(text.width * sin(angle)) + abs(text.height * cos(angle))
    x, y = text.x + (text.width - width) / 2, text.y + (text.height - height) / 2
    return _box(x, y, width, height)
