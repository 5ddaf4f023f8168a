"""One side of A4: a head across the page, two columns, a foot across the page."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.exports.flow.block import Area, Group
from chamberwise.exports.flow.filling import fill, placed
from chamberwise.exports.flow.laying import lay
from chamberwise.exports.paper.sheet import Page
from chamberwise.exports.paper.sizes import Paper, Sized
from chamberwise.exports.typesetting.measuring import Ruler

MARGIN, GUTTER, GAP = 12.0, 7.0, 2.4


def two_columns(ruler: Ruler, head: Group, groups: Sequence[Group], foot: Group) -> Page:
    """Return the page; groups fill the left column first. Raises `UnfitError`."""
    paper = Sized(Paper.A4).format
    width = paper.width - 2 * MARGIN
    (above,) = lay(ruler, [head], width, 1e6)
    (below,) = lay(ruler, [foot], width, 1e6)
    top = MARGIN + above.height + GAP
    bottom = paper.height - MARGIN - below.height - GAP
    column, height = (width - GUTTER) / 2, bottom - top
    areas = [Area(MARGIN + at * (column + GUTTER), top, column, height) for at in (0, 1)]
    columns = fill(lay(ruler, groups, column, height), areas)
    return Page(
        paper,
        (
            *placed([above], Area(MARGIN, MARGIN, width, above.height)),
            *(item for items in columns for item in items),
            *placed([below], Area(MARGIN, bottom + GAP, width, below.height)),
        ),
    )
