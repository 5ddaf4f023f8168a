"""The chart over several sheets: the first stands alone, the others have the rows by phase.

Without first actions the rows begin on the first sheet, above whom to call and the dangers.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import partial

from chamberwise.exports.control.frame import Body
from chamberwise.exports.legibility.angle import size_for
from chamberwise.exports.paper.sheet import Item
from chamberwise.exports.typesetting.guessing import Guess, Meeting
from chamberwise.exports.typesetting.measuring import Ruler
from chamberwise.exports.wall.box import Piece
from chamberwise.exports.wall.content import Wall
from chamberwise.exports.wall.edges import edges, named
from chamberwise.exports.wall.first_sheet import BESIDE, FirstSheet, first_sheet, say_first_sheet
from chamberwise.exports.wall.panels import lying
from chamberwise.exports.wall.pen import LEAST_SIZE, SMALL, Pen, TooNarrowError
from chamberwise.exports.wall.row_sheets import CLEARLY, MOST_SHEETS, Rows, row_sheets, say_rows

KEPT = 0.85
"""Of their size: what the first actions keep at least beside where things lie."""


@dataclass(frozen=True, slots=True)
class Sheets:
    """The items of each sheet; sizes in points: of all but the first actions, and of these."""

    sheets: tuple[tuple[Item, ...], ...]
    size: float
    glance: float


def over_sheets(
    content: Wall, body: Body, ruler: Ruler, least: float, fewest: int = 2
) -> Sheets | None:
    """Return the chart on as few sheets as hold it at a size, then as large as these allow.

    `None` where even the most sheets do not. Sizes are tried by guess and measured at the end.
    """
    guess = Guess(ruler)
    guess.meet(partial(_asked, content, body))
    return (
        _by_rows(content, body, guess, least, fewest)
        if not content.first
        else (_behind_first(content, body, guess, least, fewest))
    )


def _by_rows(content: Wall, body: Body, guess: Guess, least: float, fewest: int) -> Sheets | None:
    """Return the chart whose rows begin on the first sheet, read at arm's length if that can be."""
    beside = max(least, size_for(BESIDE) / SMALL)
    found = row_sheets(content, body, guess, beside, fewest) or (
        row_sheets(content, body, guess, least, fewest)
    )
    if found is None:
        return None
    pen, groups, rows = found
    sheets = [
        _row_sheet(group, body, pen, piece, number, len(rows))
        for number, (group, piece) in enumerate(zip(groups, rows, strict=True), start=1)
    ]
    return Sheets(tuple(sheets), pen.size, pen.points(pen.glance))


def _behind_first(
    content: Wall, body: Body, guess: Guess, least: float, fewest: int
) -> Sheets | None:
    """Return the chart whose first sheet has first actions, whom to call and dangers alone."""
    try:
        first, content = _first_sheet(content, body, guess, least)
    except TooNarrowError:
        return None
    notes = first.apart
    kept = notes.height + first.pen.em(1.0) if notes else 0.0
    found = row_sheets(content, body, guess, least, fewest - 1, kept)
    apart = notes if found is None else None
    if apart is not None:
        notes, found = None, row_sheets(content, body, guess, least, fewest - 1)
    if found is None:
        return None
    kept = 0.0 if apart else kept
    pen, groups, rows = _at_arm_s_length(content, body, guess, first.pen, found, kept)
    count = 1 + len(rows) + (apart is not None)
    sheets = [tuple(first.piece.at(body.x, body.y))]
    for number, (group, piece) in enumerate(zip(groups, rows, strict=True), start=2):
        sheets.append(_row_sheet(group, body, pen, piece, number, count, notes))
        notes = None
    if apart is not None:
        above = named(content, body, first.pen, count, count)
        top = body.y + above.height + first.pen.em(0.9)
        sheets.append((*above.at(body.x, body.y), *apart.at(body.x, top)))
    return Sheets(tuple(sheets), min(pen.size, first.pen.size), first.pen.points(first.pen.glance))


def _at_arm_s_length(
    content: Wall, body: Body, guess: Guess, first: Pen, found: Rows, kept: float
) -> Rows:
    """Return the rows on a sheet more if they, like the first sheet, are clearly better read so."""
    beside = size_for(BESIDE) / SMALL
    if not first.size >= beside > found.pen.size * CLEARLY:
        return found
    more = len(found.pieces) + 1
    return row_sheets(content, body, guess, beside, more, kept, most=more) or found


def _first_sheet(content: Wall, body: Body, guess: Guess, least: float) -> tuple[FirstSheet, Wall]:
    """Return the first sheet, and what is left for the others to say.

    Where things lie goes over to the next sheet if it would make the first actions much smaller.
    """
    bare = replace(content, places=())
    without = first_sheet(bare, body, guess, least)
    if not content.lying(frozenset({0})):
        return without, content
    try:
        found = first_sheet(content, body, guess, least)
    except TooNarrowError:
        return without, _later(content)
    share = found.pen.points(found.pen.glance) / without.pen.points(without.pen.glance)
    is_poorer = share < KEPT or (without.apart is None) > (found.apart is None)
    return (without, _later(content)) if is_poorer else (found, content)


def _later(content: Wall) -> Wall:
    """Return the content with what is needed at once told beside the first row."""
    first = tuple(one.number for one in content.rows[:1])
    places = (
        replace(each, rows=(*each.rows, *first)) if 0 in each.rows else each
        for each in content.places
    )
    return replace(content, places=tuple(places))


def _asked(content: Wall, body: Body, meeting: Meeting) -> None:
    """Say all that the sheets may say; room is found for everything."""
    pen = Pen(meeting, LEAST_SIZE)
    if content.first:
        say_first_sheet(content, body, pen)
    say_rows(content, body, pen)
    for number in range(1, MOST_SHEETS + 1):
        for count in (number, MOST_SHEETS):
            edges(content, body, pen, number, count)


def _row_sheet(
    group: Wall,
    body: Body,
    pen: Pen,
    rows: Piece,
    number: int,
    count: int,
    notes: Piece | None = None,
) -> tuple[Item, ...]:
    """Return the rows with what stands above and below them; the dangers where they came along."""
    above, below = edges(group, body, pen, number, count)
    if notes is not None:
        below = Piece(
            (*notes.at(0, 0), *below.at(0, notes.height)), body.width, notes.height + below.height
        )
    spare = body.height - above.height - rows.height - below.height
    return (
        *above.at(body.x, body.y),
        *rows.at(body.x, body.y + above.height),
        *_lying(group, body, pen, body.y + body.height - below.height, spare),
        *below.at(body.x, body.y + body.height - below.height),
    )


def _lying(group: Wall, body: Body, pen: Pen, bottom: float, spare: float) -> list[Item]:
    """Return where things lie that the rows of a sheet need, if there is room above its key."""
    places = group.lying(frozenset(one.number for one in group.rows))
    piece = lying(pen, places, body.width)
    if not places or piece.height + pen.em(1.0) > spare:
        return []
    return piece.at(body.x, bottom - piece.height)
