"""A row of the main line with its short branches to the side."""

from __future__ import annotations

from typing import NamedTuple

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import Align, Arrow, Item, Outline, Role, Shape, Weight
from chamberwise.exports.wall.box import Piece
from chamberwise.exports.wall.content import Down, Row, Side, Sign
from chamberwise.exports.wall.pen import HEAD, SMALL, Pen, TooNarrowError
from chamberwise.exports.wall.stops import Way, circle, way

STUB = 1.5
"""Body sizes: from the box of a row to the answers beside it."""
AHEAD = 1.4
"""Body sizes: the least length of an arrow behind an answer."""
BESIDE = 0.35
"""Body sizes: between a line and the answer that stands in it."""
LEAST_ROOM = 7.0
"""Body sizes: the least width for what a row says; with less, a line is a word."""
APART = 0.1
"""Body sizes: over and under an answer that is higher than where it leads."""
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
    left = width * pen.left if content.sides else width
    symbol = pen.em(3.0)
    room = left - symbol - pen.em(1.3)
    if room < pen.em(LEAST_ROOM):
        raise TooNarrowError(content.text)
    words = _words(pen, content, room, of)
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
    middle, gap = head / 2, pen.em(0.6)
    bus = left + pen.em(0.6)
    top = max(0.0, slots[0].above - middle) if slots else 0.0
    y = middle - slots[0].above if slots else 0.0
    for place, slot in enumerate(slots):
        at = y + slot.above
        begins = (bus if place else left), left + pen.em(STUB)
        items += _placed(pen, slot, *begins, left + width * pen.label, at)
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
    room = width * pen.label - pen.em(STUB + AHEAD + BESIDE)
    words = pen.words(side.label, room, SMALL, weight=Weight.MEDIUM, role=Role.ANSWER, of=side.of)
    label = Piece((words.at(0, 0),), min(room, words.room.width), words.height)
    drawn = way(pen, side, width * (1 - pen.left - pen.label))
    half = label.height / 2 + pen.em(APART) if side.label else 0.0
    above = max(drawn.entry, half)
    return _Slot(label, drawn, above, max(drawn.piece.height - drawn.entry, half, pen.em(0.3)))


def _placed(
    pen: Pen, slot: _Slot, begin: float, label: float, start: float, middle: float
) -> list[Item]:
    """Return a way with its answer standing in its line, as high as that."""
    drawn = slot.way.piece.at(start, middle - slot.way.entry)
    if not slot.label.width:
        return [Arrow(((begin, middle), (start, middle)), pen.line()), *drawn]
    on = label + slot.label.width + pen.em(BESIDE)
    return [
        Arrow(((begin, middle), (label - pen.em(BESIDE), middle)), pen.line(), has_head=False),
        *slot.label.at(label, middle - slot.label.height / 2),
        Arrow(((on, middle), (start, middle)), pen.line()),
        *drawn,
    ]


def down(pen: Pen, content: Down, width: float, of: str) -> Piece:
    """Return what stands beside the arrow to the next row: the answer, what is done first."""
    room = width - pen.em(2.6)
    parts: list[Piece] = []
    if content.label:
        words = pen.words(content.label, room, SMALL, weight=Weight.MEDIUM, role=Role.ANSWER, of=of)
        parts.append(Piece((words.at(0, 0),), words.room.width, words.height))
    if content.via:
        parts.append(_via(pen, content.via, of))
    between = pen.em(0.9)
    if len(parts) > 1 and sum(each.width for each in parts) + between <= room:
        return _beside(parts[0], parts[1], between)
    items: list[Item] = []
    height = 0.0
    for each in parts:
        items += each.at(0, height)
        height += each.height
    return Piece(tuple(items), width, height)


def _beside(one: Piece, other: Piece, between: float) -> Piece:
    """Return two pieces on one line, their middles level."""
    high = max(one.height, other.height)
    items = (
        *one.at(0, (high - one.height) / 2),
        *other.at(one.width + between, (high - other.height) / 2),
    )
    return Piece(items, one.width + between + other.width, high)


def _via(pen: Pen, number: int, of: str) -> Piece:
    words = pen.words(_("first do"), pen.em(6), SMALL, role=Role.NOTE, of=of)
    end = circle(pen, number, is_row=False, of=of)
    x = words.room.width + pen.em(0.4)
    items = (words.at(0, (end.height - words.height) / 2), *end.at(x, 0))
    return Piece(items, x + end.width, end.height)
