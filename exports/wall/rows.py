"""A row of the main line with its short branches to the side."""

from __future__ import annotations

from typing import NamedTuple

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import Align, Arrow, Item, Outline, Role, Shape, Weight
from chamberwise.exports.wall.box import Piece
from chamberwise.exports.wall.content import Down, Row, Side, Sign
from chamberwise.exports.wall.pen import HEAD, SMALL, Pen
from chamberwise.exports.wall.stops import Way, circle, way

LEFT = 0.32
"""Of the width: the main line."""
LABEL = 0.27
"""Of the width: the answers on the arrows to the side."""
OUTLINES = {
    Sign.ACTION: Outline.PROCESS,
    Sign.CHART: Outline.PREDEFINED_PROCESS,
    Sign.END: Outline.TERMINATOR,
}


class Drawn(NamedTuple):
    """A row, the middle of the main line, and heights: of its box, and of the symbol in that."""

    piece: Piece
    middle: float
    top: float
    bottom: float
    begins: float
    ends: float


class _Slot(NamedTuple):
    label: Piece
    way: Way
    above: float
    below: float


def row(pen: Pen, content: Row, width: float, of: str) -> Drawn:
    """Return a row in a width."""
    left = width * LEFT if content.sides else width
    symbol = pen.em(3.0)
    words = _words(pen, content, left - symbol - pen.em(1.3), of)
    slots = [_slot(pen, side, width) for side in content.sides]
    head = max(symbol, words.height + pen.em(1.2))
    items = _symbol(pen, content, left, symbol, head, of)
    items += words.at(symbol + pen.em(0.5), (head - words.height) / 2)
    sides, top, bottom = _sides(pen, slots, left, width, head)
    items = [*items, *sides]
    piece = Piece(tuple(moved(each, 0, top) for each in items), width, max(head, bottom) + top)
    inset = (head - symbol) / 2 if content.sign is Sign.DECISION else 0.0
    return Drawn(piece, symbol / 2, top, top + head, top + inset, top + head - inset)


def _words(pen: Pen, content: Row, width: float, of: str) -> Piece:
    """Return what a row says, below the name of the phase that begins with it."""
    role = Role.QUESTION if content.sign is Sign.DECISION else Role.STEP
    words = pen.words(content.text, width, HEAD, weight=Weight.BOLD, role=role, of=of)
    if not content.opens:
        return Piece((words.at(0, 0),), width, words.height)
    phase = pen.words(content.phase, width, SMALL, role=Role.NOTE, of=of)
    below = phase.height + pen.em(0.15)
    return Piece((phase.at(0, 0), words.at(0, below)), width, below + words.height)


def _sides(
    pen: Pen, slots: list[_Slot], left: float, width: float, head: float
) -> tuple[list[Item], float, float]:
    """Return the ways to the side below each other, the first level with the row's own middle.

    With them come the room they need above the row, and how far down they reach.
    """
    items: list[Item] = []
    middle, gap = head / 2, pen.em(0.55)
    bus = left + pen.em(0.6)
    top = max(0.0, slots[0].above - middle) if slots else 0.0
    y = middle - slots[0].above if slots else 0.0
    for place, slot in enumerate(slots):
        at = y + slot.above
        items += _placed(pen, slot, bus if place else left, left + width * LABEL, at)
        if place + 1 == len(slots) and place:
            items.insert(0, Arrow(((bus, middle), (bus, at)), pen.line(), has_head=False))
        y = at + slot.below + gap
    return items, top, y - gap if slots else 0.0


def _symbol(pen: Pen, content: Row, left: float, symbol: float, head: float, of: str) -> list[Item]:
    """Return the grounds and the number of a row."""
    number = pen.words(
        str(content.number), symbol, HEAD, weight=Weight.BOLD, align=Align.CENTRE,
        role=Role.NUMBER, of=of,
    )  # fmt: skip
    middle = head / 2
    items: list[Item] = []
    if content.sign is Sign.DECISION:
        start = symbol / 2
        wash = Shape(
            Outline.PANEL, start, 0, left - start, head, ground=Ink.DECISION_WASH, weight=0
        )
        top = middle - symbol / 2
        items += [
            wash,
            Shape(Outline.DECISION, 0, top, symbol, symbol, weight=pen.line(1.5), of=of),
        ]
    else:
        items.append(Shape(OUTLINES[content.sign], 0, 0, left, head, weight=pen.line(1.5), of=of))
    aside = pen.em(0.35) if content.sign is Sign.CHART else 0.0
    items.append(number.at(aside, middle - number.height / 2))
    return items


def _slot(pen: Pen, side: Side, width: float) -> _Slot:
    room = width * LABEL - pen.em(1.6)
    words = pen.words(side.label, room, SMALL, weight=Weight.MEDIUM, role=Role.ANSWER, of=side.of)
    label = Piece((words.at(0, 0),), room, words.height)
    drawn = way(pen, side, width * (1 - LEFT - LABEL))
    above = max(drawn.entry, words.height + pen.em(0.15))
    return _Slot(label, drawn, above, max(drawn.piece.height - drawn.entry, pen.em(0.3)))


def _placed(pen: Pen, slot: _Slot, begin: float, start: float, middle: float) -> list[Item]:
    return [
        *slot.label.at(
            start - slot.label.width - pen.em(0.3), middle - slot.label.height - pen.line(0.5) - 0.3
        ),
        Arrow(((begin, middle), (start, middle)), pen.line()),
        *slot.way.piece.at(start, middle - slot.way.entry),
    ]


def down(pen: Pen, content: Down, width: float, of: str) -> Piece:
    """Return what stands beside the arrow to the next row."""
    items: list[Item] = []
    room = width - pen.em(2.6)
    height = 0.0
    if content.label:
        words = pen.words(content.label, room, SMALL, weight=Weight.MEDIUM, role=Role.ANSWER, of=of)
        items.append(words.at(0, 0))
        height = words.height
    if content.via:
        via = _via(pen, content.via, of)
        items += via.at(0, height)
        height += via.height
    return Piece(tuple(items), width, height)


def _via(pen: Pen, number: int, of: str) -> Piece:
    words = pen.words(_("first do"), pen.em(6), SMALL, role=Role.NOTE, of=of)
    end = circle(pen, number, is_row=False, of=of)
    x = words.room.width + pen.em(0.4)
    items = (words.at(0, (end.height - words.height) / 2), *end.at(x, 0))
    return Piece(items, x + end.width, end.height)
