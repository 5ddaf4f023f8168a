"""A piece of the chart, put together at the origin and moved into place later."""

from __future__ import annotations

from dataclasses import dataclass, replace

from chamberwise.exports.paper.sheet import Arrow, Item


@dataclass(frozen=True, slots=True)
class Piece:
    """Items from the point (0, 0) on, and how much room they take."""

    items: tuple[Item, ...]
    width: float
    height: float

    def at(self, x: float, y: float) -> list[Item]:
        """Return the items moved."""
        return [moved(each, x, y) for each in self.items]


def moved(item: Item, x: float, y: float) -> Item:
    """Return an item moved to the right and down."""
    if isinstance(item, Arrow):
        return replace(item, points=tuple((a + x, b + y) for a, b in item.points))
    return replace(item, x=item.x + x, y=item.y + y)
