"""The chart over several sheets: first actions and panels on the first, rows on the others."""

from __future__ import annotations

from dataclasses import dataclass, replace

from chamberwise.exports.control.frame import Body
from chamberwise.exports.paper.sheet import Item, Role, Weight
from chamberwise.exports.typesetting.guessing import Guess
from chamberwise.exports.typesetting.measuring import Ruler
from chamberwise.exports.typesetting.searching import most
from chamberwise.exports.wall.box import Piece
from chamberwise.exports.wall.columns import flowed
from chamberwise.exports.wall.content import Wall
from chamberwise.exports.wall.front import first_actions, head
from chamberwise.exports.wall.panels import panels
from chamberwise.exports.wall.pen import HEAD, SMALL, Pen, TooNarrowError

MOST_SHEETS = 6
LEAST = 8.5
MOST = 60.0
STEP = 0.5
MOST_GLANCE = 3.6
GROWTH = 0.2


@dataclass(frozen=True, slots=True)
class Sheets:
    """The items of each sheet, the body size and the size of the first actions, in points."""

    sheets: tuple[tuple[Item, ...], ...]
    size: float
    glance: float


def over_sheets(content: Wall, body: Body, ruler: Ruler, least: float) -> Sheets | None:
    """Return the chart on as few sheets as hold it at a size, then as large as these allow.

    `None` where even the most sheets do not. Sizes are tried by guess and measured at the end.
    """
    guess = Guess(ruler)
    lowest = round(max(least, LEAST) / STEP + 0.49)
    for count in range(2, MOST_SHEETS + 1):
        for steps in range(_most(content, body, guess, count, lowest), lowest - 1, -1):
            found = _at(content, body, Pen(ruler, steps * STEP), count)
            if found is not None:
                return found
    return None


def _most(content: Wall, body: Body, guess: Guess, count: int, low: int) -> int:
    """Return the most steps of size that hold by guess; one less than the least where none do."""

    def fits(steps: int) -> bool:
        return _at(content, body, Pen(guess, steps * STEP), count) is not None

    return most(fits, low, int(MOST / STEP))


def _at(content: Wall, body: Body, pen: Pen, count: int) -> Sheets | None:
    try:
        return _placed(content, body, pen, count)
    except TooNarrowError:
        return None


def _placed(content: Wall, body: Body, pen: Pen, count: int) -> Sheets | None:
    """Return the chart on so many sheets; the panels have one of their own if the first is full."""
    for is_apart in (False, True):
        first, grown = _first_grown(content, body, pen, is_apart=is_apart)
        rest = count - 1 - is_apart
        if first is None or rest < 1:
            continue
        top = _name(content, body, pen, 2, count).height + pen.em(0.9)
        rows = flowed(pen, content, body.width, [body.height - top] * rest)
        if rows is None:
            return None
        pieces = [*rows, *([panels(pen, content, body.width)] if is_apart else [])]
        if any(piece.height > body.height - top for piece in pieces):
            return None
        sheets = [tuple(first.at(body.x, body.y))]
        for number, piece in enumerate(pieces, 2):
            name = _name(content, body, pen, number, len(pieces) + 1)
            sheets.append((*name.at(body.x, body.y), *piece.at(body.x, body.y + top)))
        return Sheets(tuple(sheets), pen.size, pen.points(grown.glance))
    return None


def _first_grown(
    content: Wall, body: Body, pen: Pen, *, is_apart: bool
) -> tuple[Piece | None, Pen]:
    """Return the first sheet with first actions as large as it has room for, and the pen of it."""
    first = _first(content, body, pen, is_apart=is_apart)
    while first is not None and pen.glance < MOST_GLANCE:
        larger = replace(pen, glance=pen.glance + GROWTH)
        try:
            grown = _first(content, body, larger, is_apart=is_apart)
        except TooNarrowError:
            grown = None
        if grown is None:
            break
        first, pen = grown, larger
    return first, pen


def _first(content: Wall, body: Body, pen: Pen, *, is_apart: bool) -> Piece | None:
    gap = pen.em(1.1)
    parts = [head(pen, content, body.width)]
    parts += [first_actions(pen, content, body.width)] if content.first else []
    foot = Piece((), 0.0, 0.0) if is_apart else panels(pen, content, body.width)
    words = pen.words("Continued on sheet 2", body.width, SMALL, weight=Weight.BOLD, role=Role.NOTE)
    used = sum(part.height + gap for part in parts)
    if used + words.height + gap + foot.height > body.height:
        return None
    items: list[Item] = []
    y = 0.0
    for part in parts:
        items += part.at(0, y)
        y += part.height + gap
    items += [words.at(0, y), *foot.at(0, body.height - foot.height)]
    return Piece(tuple(items), body.width, body.height)


def _name(content: Wall, body: Body, pen: Pen, number: int, count: int) -> Piece:
    onward = f"; continued on sheet {number + 1}" if number < count else ""
    said = f"{content.title}, sheet {number} of {count}{onward}"
    words = pen.words(said, body.width, HEAD, weight=Weight.BOLD, role=Role.HEADING)
    return Piece((words.at(0, 0),), body.width, words.height)
