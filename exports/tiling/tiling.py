"""A large sheet as tiles of A4."""

from __future__ import annotations

from typing import NamedTuple

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import Control
from chamberwise.exports.paper.sheet import Page
from chamberwise.exports.tiling.assembly import assembly
from chamberwise.exports.tiling.cutting import tiles
from chamberwise.exports.tiling.grid import Grid, grid
from chamberwise.exports.typesetting.measuring import Ruler


class Tiled(NamedTuple):
    """The grid, the page that shows how the tiles join, and the tiles, row by row."""

    grid: Grid
    assembly: Page
    tiles: tuple[Page, ...]

    @property
    def pages(self) -> tuple[Page, ...]:
        """All pages in the order printed."""
        return (self.assembly, *self.tiles)


def tiled(page: Page, control: Control, ruler: Ruler, part: str = "") -> Tiled:
    """Return a page cut into tiles of A4 that overlap by at least 12 mm.

    `part` says which page it is, where a sheet has several.
    """
    found = grid(page, ruler)
    name = _("{title}, {sheet}{part}, stamp {code}").format(
        title=control.title, sheet=control.sheet, part=part, code=control.code
    )
    plan = assembly(found, page.format, control, ruler)
    return Tiled(found, plan, tiles(page, found, ruler, name, bool(control.translation)))
