"""How a page is divided into tiles of A4."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.exports.paper.sheet import Align, Code, Item, Page, Text
from chamberwise.exports.paper.sizes import Format, Paper, Sized, Turn
from chamberwise.exports.tiling.extents import Box, box
from chamberwise.exports.tiling.windows import OVERLAP, Span, count, windows
from chamberwise.exports.typesetting.measuring import Ruler, Setting

MARGIN = 12.0
"""Around the window of a tile: no office printer prints to the edge."""
CODE_WEIGHT = 20.0
SHAPE_WEIGHT = 0.02


@dataclass(frozen=True, slots=True)
class Grid:
    """The windows of a page, and the paper of every tile."""

    tile: Format
    columns: tuple[Span, ...]
    rows: tuple[Span, ...]
    overlap: float = OVERLAP

    @property
    def count(self) -> int:
        """How many tiles there are."""
        return len(self.columns) * len(self.rows)

    @property
    def windows(self) -> tuple[tuple[str, Box], ...]:
        """Each tile by its label, `row.column`, and what it shows of the page; row by row."""
        return tuple(
            (f"{row}.{column}", Box(across.begins, down.begins, across.ends, down.ends))
            for row, down in enumerate(self.rows, start=1)
            for column, across in enumerate(self.columns, start=1)
        )


def grid(page: Page, ruler: Ruler) -> Grid:
    """Return the grid with fewest tiles, cut through as little text as can be."""
    papers = [Sized(Paper.A4, turn).format for turn in Turn]
    tile = min(papers, key=lambda each: _tiles(page.format, each))
    wide, high = tile.width - 2 * MARGIN, tile.height - 2 * MARGIN
    across, down = _spans(page.items, ruler)
    return Grid(
        tile,
        windows(page.format.width, wide, across),
        windows(page.format.height, high, down),
    )


def _tiles(page: Format, tile: Format) -> int:
    across = count(page.width, tile.width - 2 * MARGIN)
    return across * count(page.height, tile.height - 2 * MARGIN)


def _spans(items: tuple[Item, ...], ruler: Ruler) -> tuple[list[Span], list[Span]]:
    ruler.measure(_setting(each) for each in items if isinstance(each, Text))
    boxes = [(_printed(each, ruler), _weight(each)) for each in items]
    across = [Span(each.left, each.right, weight) for each, weight in boxes]
    return across, [Span(each.top, each.bottom, weight) for each, weight in boxes]


def _setting(text: Text) -> Setting:
    return Setting(text.runs, text.style, text.width)


def _printed(item: Item, ruler: Ruler) -> Box:
    """Return the box of an item; of a text, no wider than its letters."""
    around = box(item)
    if not isinstance(item, Text) or item.turned:
        return around
    spare = max(0.0, item.width - ruler(_setting(item)).width)
    before = {Align.LEFT: 0.0, Align.CENTRE: spare / 2, Align.RIGHT: spare}[item.style.align]
    left = around.left + before
    return around._replace(left=left, right=left + item.width - spare)


def _weight(item: Item) -> float:
    if isinstance(item, Text):
        return 1.0
    return CODE_WEIGHT if isinstance(item, Code) else SHAPE_WEIGHT
