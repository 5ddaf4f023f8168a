"""The page that shows how tiles are put together."""

from __future__ import annotations

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import Control
from chamberwise.exports.control.frame import Body, Frame
from chamberwise.exports.paper.sheet import (
    Align,
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
from chamberwise.exports.paper.sizes import Format, Paper, Sized
from chamberwise.exports.tiling.grid import Grid
from chamberwise.exports.typesetting.measuring import Ruler, Setting

TITLE = Style(18, Weight.BOLD)
LINE = Style(11)
NUMBER = Style(13, Weight.BOLD, align=Align.CENTRE)
GAP = 3.0


def assembly(grid: Grid, whole: Format, control: Control, ruler: Ruler) -> Page:
    """Return the page that says how to put the tiles of a `whole` together."""
    frame = Frame(ruler, control, Sized(Paper.A4).format)
    body = frame.body
    told = [
        (
            _("{title}, {sheet}: putting the tiles together").format(
                title=control.title, sheet=control.sheet
            ),
            TITLE,
            Role.TITLE,
        )
    ]
    told += [(line, LINE, Role.LINE) for line in _lines(grid, whole)]
    items: list[Item] = []
    y = body.y + GAP
    for words, style, role in told:
        runs = (Run(words),)
        high = ruler(Setting(runs, style, body.width)).height
        items.append(Text(body.x, y, body.width, high, runs, style, role, Tier.REFER))
        y += high + GAP
    return frame.page((*items, *_plan(grid, whole, body, y + GAP, ruler)), 1, 1)


def _lines(grid: Grid, whole: Format) -> tuple[str, ...]:
    size = _("{width}\u00a0mm by {height}\u00a0mm").format(
        width=decimal(f"{whole.width:g}"), height=decimal(f"{whole.height:g}")
    )
    return (
        _("1. Print {count} tiles on A4 at 100\u00a0%, one-sided.").format(count=grid.count),
        _(
            "2. Where a tile joins one to its left or above it, cut it there along its corner "
            "marks."
        ),
        _(
            "3. Lay each tile over its neighbours so that the print matches: {overlap}\u00a0mm are "
            "printed on both."
        ).format(overlap=decimal(f"{grid.overlap:g}")),
        _(
            "4. Tape the back. Cut the outer edge along the corner marks. The whole is {size}."
        ).format(size=size),
        _("5. Measure the bar at the foot of the sheet: 100\u00a0mm."),
    )


def _plan(grid: Grid, whole: Format, body: Body, top: float, ruler: Ruler) -> list[Item]:
    """Return the tiles as they lie, drawn small: each where it is seen once cut."""
    scale = min(body.width / whole.width, (body.bottom - top) / whole.height, 0.4)
    items: list[Item] = []
    for label, window in grid.windows:
        x, y = body.x + window.left * scale, top + window.top * scale
        width, height = (window.right - window.left) * scale, (window.bottom - window.top) * scale
        items.append(Shape(Outline.PANEL, x, y, width, height))
        runs = (Run(label),)
        high = ruler(Setting(runs, NUMBER, width - 4)).height
        middle = y + (height - high) / 2
        items.append(Text(x + 2, middle, width - 4, high, runs, NUMBER, Role.NUMBER, Tier.REFER))
    return items
