"""The same items, elsewhere."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.exports.paper.sheet import Arrow, Item


def moved(item: Item, right: float, down: float) -> Item:
    """Return an item moved by millimetres."""
    if isinstance(item, Arrow):
        return replace(item, points=tuple((x + right, y + down) for x, y in item.points))
    return replace(item, x=item.x + right, y=item.y + down)
