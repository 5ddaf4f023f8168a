"""The chart over several sheets: the first stands alone, the others have the rows by phase.

Without first actions the rows begin on the first sheet, above whom to call and the dangers.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import partial
from itertools import pairwise
from math import ceil
from typing import NamedTuple

from chamberwise.exports.control.frame import Body
from chamberwise.exports.legibility.angle import size_for
from chamberwise.exports.paper.sheet import Item
from chamberwise.exports.typesetting.guessing import Asked, Guess, Meeting, measured
from chamberwise.exports.typesetting.measuring import Ruler
from chamberwise.exports.typesetting.searching import most
from chamberwise.exports.wall.box import Piece
from chamberwise.exports.wall.columns import Flow
from chamberwise.exports.wall.content import MOST_BOXES, Wall
from chamberwise.exports.wall.edges import edges, named
from chamberwise.exports.wall.first_sheet import BESIDE, FirstSheet, first_sheet, say_first_sheet
from chamberwise.exports.wall.front import in_rows
from chamberwise.exports.wall.panels import lying
from chamberwise.exports.wall.parting import Measured, parted
from chamberwise.exports.wall.pen import (
    LEAST_SIZE,
    MOST_SIZE,
    SMALL,
    STEP,
    Pen,
    TooNarrowError,
)

MOST_SHEETS = 7
KEPT = 0.85
"""Of their size: what the first actions keep at least beside where things lie."""
CLEARLY = 1.1
"""Times: how much larger letters are in two columns, or without regard to phases, if these are."""


@dataclass(frozen=True, slots=True)
class Sheets:
    """The items of each sheet; sizes in points: of all but the first actions, and of these."""

    sheets: tuple[tuple[Item, ...], ...]
    size: float
    glance: float


class _Plan(NamedTuple):
    """The most sheets of rows, the columns of each, and whether a column begins with a phase.

    At the foot of the first of them some millimetres are kept free.
    """

    most: int
    columns: int
    by_phase: bool
    kept: float


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
    found = _row_sheets(content, body, guess, beside, fewest) or (
        _row_sheets(content, body, guess, least, fewest)
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
    found = _row_sheets(content, body, guess, least, fewest - 1, kept)
    apart = notes if found is None else None
    if apart is not None:
        notes, found = None, _row_sheets(content, body, guess, least, fewest - 1)
    if found is None:
        return None
    pen, groups, rows = found
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


def _row_sheets(
    content: Wall, body: Body, guess: Guess, least: float, fewest: int, kept: float = 0.0
) -> tuple[Pen, list[Wall], list[Piece]] | None:
    """Return the rows on sheets, with what stands on each, in the largest letters that fit."""
    low = round(max(least, LEAST_SIZE) / STEP + 0.49)
    fewest = max(fewest, ceil(sum(one.boxes for one in content.rows) / MOST_BOXES))
    for count in range(fewest, MOST_SHEETS):
        steps, plan = _best(content, body, guess, count, low, kept)
        while steps >= low:
            pen = Pen(guess, steps * STEP)
            ruler = measured(guess, partial(_laid, content, body, pen, plan))
            pen = replace(pen, ruler=ruler)
            found = _parted(content, body, pen, plan)
            if found is not None:
                return (pen, *found)
            steps -= 1
    return None


def _best(
    content: Wall, body: Body, guess: Guess, count: int, low: int, kept: float
) -> tuple[int, _Plan]:
    """Return the steps of size, one less than the least where none hold, and how rows are parted.

    What reads worse has to give clearly larger letters, or letters read at arm's length.
    """
    arm = ceil(size_for(BESIDE) / SMALL / STEP)
    plans = [
        _Plan(count, columns, by_phase, kept) for columns in (1, 2) for by_phase in (True, False)
    ]
    best, plan = low - 1, plans[0]
    for each in plans:
        clearly = arm if best < arm < best * CLEARLY else ceil(best * CLEARLY)
        needed = clearly if best >= low else low
        steps = _most(content, body, guess, each, needed)
        if steps >= needed:
            best, plan = steps, each
    return best, plan


def _most(content: Wall, body: Body, guess: Guess, plan: _Plan, low: int) -> int:
    """Return the most steps of size that hold by guess; one less than the least where none do."""

    def fits(steps: int) -> bool:
        return _parted(content, body, Pen(guess, steps * STEP), plan) is not None

    return most(fits, low + 1, int(MOST_SIZE / STEP)) if fits(low) else low - 1


def _asked(content: Wall, body: Body, meeting: Meeting) -> None:
    """Say all that the sheets may say; room is found for everything."""
    pen = Pen(meeting, LEAST_SIZE)
    if content.first:
        say_first_sheet(content, body, pen)
    _parted(content, body, pen, _Plan(MOST_SHEETS, 1, by_phase=False, kept=0.0))
    for number in range(1, MOST_SHEETS + 1):
        for count in (number, MOST_SHEETS):
            edges(content, body, pen, number, count)


def _laid(content: Wall, body: Body, pen: Pen, plan: _Plan, asked: Asked) -> None:
    _parted(content, body, replace(pen, ruler=asked), plan)


def _parted(
    content: Wall, body: Body, pen: Pen, plan: _Plan
) -> tuple[list[Wall], list[Piece]] | None:
    """Return what stands on each sheet, and its rows; `None` where they do not fit."""
    between = pen.em(2.2)
    width = (body.width - (plan.columns - 1) * between) / plan.columns
    try:
        flow = Flow(pen, content, width)
        rooms = _rooms(content, body, pen, plan)
        starts = parted(
            _measured(flow, content, rooms[-1] - rooms[0]),
            plan.most * plan.columns,
            MOST_BOXES // plan.columns,
            by_phase=plan.by_phase,
        )
        pieces = flow.parted(starts, rooms) if starts else None
    except TooNarrowError:
        return None
    if starts is None or pieces is None:
        return None
    firsts = [*starts[:: plan.columns], len(content.rows)]
    groups = [replace(content, rows=content.rows[a:b]) for a, b in pairwise(firsts)]
    sheets = []
    for place in range(0, len(pieces), plan.columns):
        items, high = in_rows(
            pieces[place : place + plan.columns], plan.columns, width + between, 0
        )
        sheets.append(Piece(tuple(items), body.width, high))
    return groups, sheets


def _measured(flow: Flow, content: Wall, taken: float) -> list[Measured]:
    """Return the rows to be parted; what else the first sheet holds counts with its first row."""
    heights = flow.heights()
    heights[:1] = [height + taken for height in heights[:1]]
    return [
        Measured(height, one.boxes, one.opens)
        for height, one in zip(heights, content.rows, strict=True)
    ]


def _rooms(content: Wall, body: Body, pen: Pen, plan: _Plan) -> list[float]:
    """Return the room for rows in each column of each sheet, and in one more."""
    first = 2 if content.first else 1
    rooms = [
        body.height - sum(each.height for each in edges(content, body, pen, number, 10))
        for number in range(first, first + plan.most + 1)
    ]
    rooms[0] -= plan.kept
    return [room for room in rooms for _each in range(plan.columns)]


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
