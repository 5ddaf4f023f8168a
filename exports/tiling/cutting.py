"""One tile: what of a page lies in its window, masked to it, with crop marks and its words."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import FOLLOW, UNREVIEWED
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import (
    Arrow,
    Item,
    Outline,
    Page,
    Role,
    Run,
    Shape,
    Style,
    Text,
    Tier,
    Weight,
)
from chamberwise.exports.tiling.extents import Box, box
from chamberwise.exports.tiling.grid import MARGIN, Grid
from chamberwise.exports.typesetting.measuring import Ruler, Setting

LABEL = N_("Tile {label} of {count}: {name}")
STYLE = Style(9.2, Weight.MEDIUM, pitch=1.25)
FROM_EDGE = 6.0
MARK = 5.0
"""Length of a crop mark, and how far it stays from what is printed: a millimetre."""


def tiles(
    page: Page, grid: Grid, ruler: Ruler, name: str, is_unreviewed: bool = False
) -> tuple[Page, ...]:
    """Return every tile of a page, row by row; `name` says on each what it is part of."""
    return tuple(
        _tile(
            page,
            grid,
            window,
            _(LABEL).format(label=label, count=grid.count, name=name),
            ruler,
            is_unreviewed,
        )
        for label, window in grid.windows
    )


def _tile(
    page: Page, grid: Grid, window: Box, label: str, ruler: Ruler, is_unreviewed: bool
) -> Page:
    right, down = MARGIN - window.left, MARGIN - window.top
    shown = Box(MARGIN, MARGIN, window.right + right, window.bottom + down)
    inside = (each for each in page.items if box(each).meets(window))
    items: list[Item] = [moved(each, right, down) for each in inside]
    items += _masks(shown, grid)
    items += _marks(shown)
    items += [_rule_of_use(label, shown, ruler, is_unreviewed), _label(label, shown, grid, ruler)]
    return Page(grid.tile, tuple(items))


def _masks(shown: Box, grid: Grid) -> Iterator[Shape]:
    """White over all that lies beyond the window."""
    width, height = grid.tile
    for left, top, right, bottom in (
        (0, 0, width, shown.top),
        (0, shown.bottom, width, height),
        (0, shown.top, shown.left, shown.bottom),
        (shown.right, shown.top, width, shown.bottom),
    ):
        size = (right - left, bottom - top)
        yield Shape(Outline.PANEL, left, top, *size, Ink.CLEAR, Ink.WHITE, 0)


def _marks(shown: Box) -> Iterator[Arrow]:
    for x, away in ((shown.left, -1), (shown.right, 1)):
        for y, off in ((shown.top, -1), (shown.bottom, 1)):
            across = ((x + away, y), (x + away * (1 + MARK), y))
            along = ((x, y + off), (x, y + off * (1 + MARK)))
            yield Arrow(across, 0.2, has_head=False)
            yield Arrow(along, 0.2, has_head=False)


def _rule_of_use(label: str, shown: Box, ruler: Ruler, is_unreviewed: bool) -> Text:
    """Return what stands above a tile, for its cut may go through the foot of the whole."""
    foreign = (Run(f" {_(UNREVIEWED)}.", Weight.BOLD),) if is_unreviewed else ()
    runs = (Run(f"{label.partition(':')[0]}. "), Run(_(FOLLOW), Weight.BOLD), *foreign)
    width = shown.right - shown.left - 4
    high = ruler(Setting(runs, STYLE, width)).height
    return Text(
        shown.left + 2, shown.top - 2 - high, width, high, runs, STYLE, Role.NOTE, Tier.REFER
    )


def _label(label: str, shown: Box, grid: Grid, ruler: Ruler) -> Text:
    runs, width = (Run(label),), shown.right - shown.left - 4
    high = ruler(Setting(runs, STYLE, width)).height
    y = min(shown.bottom + 2, grid.tile.height - FROM_EDGE - high)
    return Text(shown.left + 2, y, width, high, runs, STYLE, Role.NOTE, Tier.REFER)
