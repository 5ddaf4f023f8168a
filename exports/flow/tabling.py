"""Rows of a table: cells side by side, as high as the highest, with a line below."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.exports.flow.block import Block, Group, Laid
from chamberwise.exports.flow.laying import beside, lay, measure, under
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import Arrow, Item, Outline, Shape
from chamberwise.exports.typesetting.measuring import Ruler

PADDING = 1.6
Cell = tuple[Block, ...]
REMARK_WIDTH = 108.0
"""Millimetres in which a line of small type stays short enough to read."""


def titled(ruler: Ruler, title: Block, remark: Block, width: float) -> Laid:
    """Return a title with a remark at its right, or below it where there is no room beside."""
    if width < 2 * REMARK_WIDTH:
        (above,) = lay(ruler, [Group((title,), 0.8)], width, 1e6)
        (below,) = lay(ruler, [Group((remark,), 2.0)], min(width, REMARK_WIDTH), 1e6)
        return under(above, below)
    at = width - REMARK_WIDTH
    (left,) = lay(ruler, [Group((title,), 2.0)], at - 6, 1e6)
    (right,) = lay(ruler, [Group((remark,), 2.0)], REMARK_WIDTH, 1e6)
    return beside(left, right, at)


def shares(width: float, parts: Sequence[float]) -> tuple[float, ...]:
    """Return widths that fill one width in given parts."""
    return tuple(width * part / sum(parts) for part in parts)


def row(
    ruler: Ruler,
    cells: Sequence[Cell],
    widths: Sequence[float],
    most: float,
    *,
    least: float = 0.0,
    ground: Ink = Ink.CLEAR,
    keeps_next: bool = False,
) -> Laid:
    """Return one row, at least so high; empty cells are to write in, parted by upright lines
    where there is no ground.

    Raises `UnfitError` where a cell does not fit.
    """
    groups = [
        (Group(cell, 0.0), width - 2 * PADDING) for cell, width in zip(cells, widths, strict=True)
    ]
    measure(ruler, groups)
    laid = [lay(ruler, [each], wide, 1e6)[0] if each.blocks else None for each, wide in groups]
    high = max([least, *(each.height for each in laid if each)]) + 2 * PADDING
    _check(ruler, cells, widths, most, high)
    total = sum(widths)
    items: list[Item] = []
    if ground is not Ink.CLEAR:
        items.append(Shape(Outline.PANEL, 0, 0, total, high, ground, ground, 0))
    x = 0.0
    for place, (each, width) in enumerate(zip(laid, widths, strict=True)):
        if place and ground is Ink.CLEAR:
            items.append(Arrow(((x, 0), (x, high)), 0.2, Ink.RULE, has_head=False))
        if each:
            items += [moved(item, x + PADDING, PADDING) for item in each.items]
        x += width
    items.append(Arrow(((0, high), (total, high)), 0.25, Ink.BLACK, has_head=False))
    return Laid(tuple(items), high, 0.0, keeps_next)


def _check(
    ruler: Ruler, cells: Sequence[Cell], widths: Sequence[float], most: float, high: float
) -> None:
    """Raise `UnfitError` for the cell that is higher than a page."""
    if high > most:
        for cell, width in zip(cells, widths, strict=True):
            for block in cell:
                lay(ruler, [Group((block,), 0.0)], width - 2 * PADDING, most)
