"""Where a way ends, drawn: a row's number, a box, or a number of the full pathway."""

from __future__ import annotations

from typing import NamedTuple

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.legibility.marks_above import above
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Align, Arrow, Outline, Role, Shape, Weight
from chamberwise.exports.wall.box import Piece
from chamberwise.exports.wall.content import Side, Sign, Stop
from chamberwise.exports.wall.pen import PLAIN, SMALL, Pen

OUTLINES = {
    None: Outline.PROCESS,
    Sign.ACTION: Outline.PROCESS,
    Sign.DECISION: Outline.PROCESS,
    Sign.CHART: Outline.PREDEFINED_PROCESS,
    Sign.END: Outline.TERMINATOR,
}


def circle(pen: Pen, number: int, *, is_row: bool, of: str) -> Piece:
    """Return a connector: dark for a row of this chart, light for a step of the full pathway."""
    side = pen.em(2.1 if is_row or number < 100 else 2.7)
    ink, ground = (Ink.WHITE, Ink.BLACK) if is_row else (Ink.BLACK, Ink.WHITE)
    words = pen.words(
        str(number), side, PLAIN if is_row else SMALL, weight=Weight.BOLD, ink=ink,
        align=Align.CENTRE, role=Role.NUMBER, of=of,
    )  # fmt: skip
    shape = Shape(Outline.CONNECTOR, 0, 0, side, side, Ink.BLACK, ground, pen.line(), of)
    return Piece((shape, words.at(0, (side - words.height) / 2)), side, side)


class Way(NamedTuple):
    """What a way leads to, drawn, and how far down its arrow comes in."""

    piece: Piece
    entry: float


def way(pen: Pen, side: Side, width: float) -> Way:
    """Return what is done on a way and where it ends, in a width."""
    if side.stop.row and not side.done:
        end = circle(pen, side.stop.row, is_row=True, of=side.of)
        return Way(end, end.height / 2)
    boxes = [_box(pen, "\n".join(side.done), None, width, side)] if side.done else []
    if side.boxes > len(boxes):
        boxes.append(_box(pen, _said(side.stop), side.stop.sign, width, side))
    *above, last = boxes
    last = _with_number(pen, side, last)
    if not above:
        return Way(last, last.height / 2)
    return Way(_stacked(pen, above[0], last), above[0].height / 2)


def _said(stop: Stop) -> str:
    return _("Ask: {text}").format(text=stop.text) if stop.is_asked else stop.text


def _box(pen: Pen, text: str, sign: Sign | None, width: float, side: Side) -> Piece:
    room = width - (pen.em(3.7) if side.stop.row or side.stop.full else 0.0)
    pad = pen.em(0.6) + (max(2.2, 5 * pen.line()) if sign is Sign.CHART else 0.0)
    words = pen.words(text, room - 2 * pad, PLAIN, role=Role.STEP, of=side.of)
    is_short = "\n" not in text and words.room.width + 2 * pad + 0.5 < room
    box_width = words.room.width + 2 * pad + 0.5 if is_short else room
    higher = pen.em(above(text))
    height = words.height + higher + pen.em(1.16)
    weight = pen.line(1.5) if sign is Sign.CHART else pen.line()
    shape = Shape(OUTLINES[sign], 0, 0, box_width, height, weight=weight, of=side.of)
    return Piece((shape, words.at(pad, higher + pen.em(0.58))), box_width, height)


def _stacked(pen: Pen, above: Piece, below: Piece) -> Piece:
    x, gap = pen.em(1.4), pen.em(1.5)
    arrow = Arrow(((x, above.height), (x, above.height + gap)), pen.line())
    items = (*above.items, arrow, *below.at(0, above.height + gap))
    return Piece(items, max(above.width, below.width), above.height + gap + below.height)


def _with_number(pen: Pen, side: Side, box: Piece) -> Piece:
    number = side.stop.row or side.stop.full
    if not number:
        return box
    end = circle(pen, number, is_row=bool(side.stop.row), of=side.of)
    height, gap = max(box.height, end.height), pen.em(0.9)
    middle = height / 2
    items = (
        *box.at(0, middle - box.height / 2),
        Arrow(((box.width, middle), (box.width + gap, middle)), pen.line()),
        *end.at(box.width + gap, middle - end.height / 2),
    )
    return Piece(items, box.width + gap + end.width, height)
