"""Items moved on their paper."""

from __future__ import annotations

from chamberwise.exports.paper.sheet import Arrow, Code, Item, Shape, Text


def moved(item: Item, right: float, down: float) -> Item:
    """Return an item moved, in millimetres; all else of it stays.

    Laying out moves items by the ten thousand. So every field is named here: looking them up each
    time takes three times as long.
    """
    if isinstance(item, Text):
        return Text(
            item.x + right, item.y + down, item.width, item.height, item.runs, item.style,
            item.role, item.tier, item.of, item.turned,
        )  # fmt: skip
    if isinstance(item, Shape):
        return Shape(
            item.outline, item.x + right, item.y + down, item.width, item.height, item.border,
            item.ground, item.weight, item.of,
        )  # fmt: skip
    if isinstance(item, Code):
        return Code(item.x + right, item.y + down, item.side, item.rows, item.alternative)
    points = tuple((x + right, y + down) for x, y in item.points)
    return Arrow(points, item.weight, item.ink, item.has_head, item.is_dashed, item.of)
