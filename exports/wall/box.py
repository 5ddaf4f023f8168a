"""A piece of the chart, put together at the origin and moved into place later."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import Item


@dataclass(frozen=True, slots=True)
class Piece:
    """Items from the point (0, 0) on, and how much room they take."""

    items: tuple[Item, ...]
    width: float
    height: float

    def at(self, x: float, y: float) -> list[Item]:
        """Return the items moved."""
        return [moved(each, x, y) for each in self.items]
