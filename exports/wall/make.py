"""An order for the wall chart, carried out."""

from __future__ import annotations

from dataclasses import replace
from math import floor

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.frame import Body, Frame
from chamberwise.exports.language.values import paper_told
from chamberwise.exports.legibility.angle import read_from, size_for
from chamberwise.exports.paper.sizes import Paper, Sized, larger
from chamberwise.exports.printing.order import Made, Order, UnfitError
from chamberwise.exports.wall.content import MOST_BOXES, Wall
from chamberwise.exports.wall.extract import wall_chart
from chamberwise.exports.wall.first_sheet import BESIDE
from chamberwise.exports.wall.over_sheets import Sheets, over_sheets
from chamberwise.exports.wall.pen import LEAST_SMALL, SMALL
from chamberwise.exports.wall.placing import Placed, longest, place
from chamberwise.exports.wall.row_sheets import CLEARLY, MOST_SHEETS

FEW_SHEETS = 3
"""As many as are hung for letters read at arm's length, where all would stand on one."""


def make(order: Order) -> Made:
    """Return the chart on one page, or over several where that is needed.

    Raises `UnfitError` where several do not help either.
    """
    content = wall_chart(order.library, order.pathway)
    content = replace(content, unit=order.control.unit or content.unit)
    frame = Frame(order.ruler, order.control, order.sized.format)
    is_large = content.boxes > MOST_BOXES
    placed = None if is_large else place(content, frame.body, order.ruler)
    if placed is not None and (order.distance or 0) <= _far(placed):
        sheets = _larger_letters(order, content, frame.body, placed)
        if sheets is None:
            return Made((frame.page(placed.items, 1, 1, _said(content, placed)),))
    else:
        sheets = over_sheets(content, frame.body, order.ruler, _least(order))
    if sheets is None:
        raise _unfit(order, content)
    count = len(sheets.sheets)
    pages = (
        frame.page(items, number, count, _said(content, sheets))
        for number, items in enumerate(sheets.sheets, 1)
    )
    told = _("The chart takes {count} sheets of {sized}: hang them side by side.").format(
        count=count, sized=paper_told(order.sized)
    )
    return Made(tuple(pages), (told,))


def _larger_letters(order: Order, content: Wall, body: Body, placed: Placed) -> Sheets | None:
    """Return the chart on a few sheets where one is read from clearly less than arm's length."""
    if _far(placed) * CLEARLY >= BESIDE:
        return None
    least = max(_least(order), size_for(BESIDE) / SMALL)
    sheets = over_sheets(content, body, order.ruler, least)
    is_read = sheets is not None and _far(sheets) > _far(placed)
    return sheets if sheets and is_read and len(sheets.sheets) <= FEW_SHEETS else None


def _said(content: Wall, placed: Placed | Sheets) -> str:
    act = _down(_far(placed))
    if not content.first:
        return _("Read from up to {far}.").format(far=act)
    glance = _down(read_from(placed.glance))
    return _(
        "First actions are read from up to {glance}, everything else on the chart from up to {act}."
    ).format(glance=glance, act=act)


def _far(placed: Placed | Sheets) -> float:
    return read_from(max(round(placed.size * SMALL, 1), LEAST_SMALL))


def _down(metres: float) -> str:
    """Return a distance rounded down, below a metre to the centimetre: what is printed is true."""
    places = 1 if metres >= 1 else 2
    return decimal(f"{floor(metres * 10**places) / 10**places:.{places}f}") + "\u00a0m"


def _unfit(order: Order, content: Wall) -> UnfitError:
    body = _body(order, order.sized)
    best = over_sheets(content, body, order.ruler, 0.0, fewest=MOST_SHEETS)
    if best is None:
        why = _(
            "The wall chart does not fit on {sized} in letters that can be read in the hand."
        ).format(sized=paper_told(order.sized))
    else:
        why = _(
            "On {count} sheets of {sized} the wall chart is read from up to {down}, not from "
            "{distance}\u00a0m."
        ).format(
            count=len(best.sheets),
            sized=paper_told(order.sized),
            down=_down(_far(best)),
            distance=decimal(f"{order.distance:g}"),
        )
    shorter = "; ".join(f"“{text}”" for text in longest(content))
    ways_out = [
        *_larger(order, content),
        _("Fewer steps under `wall chart`, or a part of the pathway made a pathway of its own."),
        _("Shorter words, first of all: {shorter}.").format(shorter=shorter),
    ]
    if order.distance and best is not None:
        ways_out.append(
            _("Ask for {down}, and hang it where people step up to it.").format(
                down=_down(_far(best))
            )
        )
    return UnfitError(why, tuple(ways_out))


def _larger(order: Order, content: Wall) -> list[str]:
    """Return the next paper on which the chart is read from there, if there is one."""
    least = _least(order)
    paper: Paper | None = larger(order.sized.paper)
    while paper is not None:
        sized = Sized(paper, order.sized.turn)
        found = over_sheets(content, _body(order, sized), order.ruler, least)
        if found is not None:
            count, far = len(found.sheets), _down(_far(found))
            return [
                _("Larger paper: on {count} sheets of {sized} it is read from up to {far}.").format(
                    count=count, sized=paper_told(sized), far=far
                )
            ]
        paper = larger(paper)
    needed = size_for(order.distance or 0.5)
    return [
        _("Larger paper does not help alone: letters of {needed} points are needed.").format(
            needed=decimal(f"{needed:.0f}")
        )
    ]


def _least(order: Order) -> float:
    """Return the body size in points that the distance asks for."""
    return size_for(order.distance) / SMALL if order.distance else 0.0


def _body(order: Order, sized: Sized) -> Body:
    return Frame(order.ruler, order.control, sized.format).body
