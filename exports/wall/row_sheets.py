"""The rows of a chart on as few sheets as hold them, by phase where that reads as well."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from functools import partial
from itertools import pairwise
from math import ceil
from typing import NamedTuple

from chamberwise.exports.control.frame import Body
from chamberwise.exports.legibility.angle import size_for
from chamberwise.exports.typesetting import searching
from chamberwise.exports.typesetting.guessing import Asked, Guess, measured
from chamberwise.exports.wall.box import Piece
from chamberwise.exports.wall.columns import Flow
from chamberwise.exports.wall.content import MOST_BOXES, Wall
from chamberwise.exports.wall.edges import edges
from chamberwise.exports.wall.first_sheet import BESIDE
from chamberwise.exports.wall.front import in_rows
from chamberwise.exports.wall.parting import Measured, parted
from chamberwise.exports.wall.pen import LEAST_SIZE, MOST_SIZE, SMALL, STEP, Pen, TooNarrowError

MOST_SHEETS = 7
CLEARLY = 1.1
"""Times: how much larger letters are in two columns, or without regard to phases, if these are."""


class Rows(NamedTuple):
    """The pen of the rows, what stands on each sheet, and the rows of each."""

    pen: Pen
    groups: list[Wall]
    pieces: list[Piece]


class Plan(NamedTuple):
    """The most sheets of rows, the columns of each, and whether a column begins with a phase.

    At the foot of the first of them some millimetres are kept free.
    """

    most: int
    columns: int
    by_phase: bool
    kept: float


def row_sheets(
    content: Wall,
    body: Body,
    guess: Guess,
    least: float,
    fewest: int,
    kept: float = 0.0,
    most: int = MOST_SHEETS - 1,
) -> Rows | None:
    """Return the rows on sheets, with what stands on each, in the largest letters that fit."""
    low = round(max(least, LEAST_SIZE) / STEP + 0.49)
    fewest = max(fewest, ceil(sum(one.boxes for one in content.rows) / MOST_BOXES))
    for count in range(fewest, most + 1):
        for steps, plan in _ranked(content, body, guess, count, low, kept):
            found = _largest(content, body, guess, plan, range(steps, low - 1, -1))
            if found is not None:
                return found
    return None


def say_rows(content: Wall, body: Body, pen: Pen) -> None:
    """Say all that the rows say, for a guess to meet its words."""
    _parted(content, body, pen, Plan(MOST_SHEETS, 1, by_phase=False, kept=0.0))


def _largest(
    content: Wall, body: Body, guess: Guess, plan: Plan, sizes: Iterable[int]
) -> Rows | None:
    """Return the rows in the first of some steps of size at which they fit once measured."""
    for steps in sizes:
        pen = Pen(guess, steps * STEP)
        pen = replace(pen, ruler=measured(guess, partial(_laid, content, body, pen, plan)))
        found = _parted(content, body, pen, plan)
        if found is not None:
            return Rows(pen, *found)
    return None


def _ranked(
    content: Wall, body: Body, guess: Guess, count: int, low: int, kept: float
) -> Iterator[tuple[int, Plan]]:
    """Yield ways to part rows with their steps of size by guess, the best first.

    The others are for a best one that does not hold once measured: rather another parting than a
    further sheet.
    """
    plans = [
        Plan(count, columns, by_phase, kept) for columns in (1, 2) for by_phase in (True, False)
    ]
    steps, best = _best(content, body, guess, plans, low)
    if steps < low:
        return
    yield steps, best
    for plan in plans:
        if plan != best:
            yield _most(content, body, guess, plan, low), plan


def _best(
    content: Wall, body: Body, guess: Guess, plans: Sequence[Plan], low: int
) -> tuple[int, Plan]:
    """Return the steps of size, one less than the least where none hold, and how rows are parted.

    What reads worse has to give clearly larger letters, or letters read at arm's length.
    """
    arm = ceil(size_for(BESIDE) / SMALL / STEP)
    best, plan = low - 1, plans[0]
    for each in plans:
        clearly = arm if best < arm < best * CLEARLY else ceil(best * CLEARLY)
        needed = clearly if best >= low else low
        steps = _most(content, body, guess, each, needed)
        if steps >= needed:
            best, plan = steps, each
    return best, plan


def _most(content: Wall, body: Body, guess: Guess, plan: Plan, low: int) -> int:
    """Return the most steps of size that hold by guess; one less than the least where none do."""

    def fits(steps: int) -> bool:
        return _parted(content, body, Pen(guess, steps * STEP), plan) is not None

    return searching.most(fits, low + 1, int(MOST_SIZE / STEP)) if fits(low) else low - 1


def _laid(content: Wall, body: Body, pen: Pen, plan: Plan, asked: Asked) -> None:
    _parted(content, body, replace(pen, ruler=asked), plan)


def _parted(
    content: Wall, body: Body, pen: Pen, plan: Plan
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


def _rooms(content: Wall, body: Body, pen: Pen, plan: Plan) -> list[float]:
    """Return the room for rows in each column of each sheet, and in one more."""
    first = 2 if content.first else 1
    rooms = [
        body.height - sum(each.height for each in edges(content, body, pen, number, 10))
        for number in range(first, first + plan.most + 1)
    ]
    rooms[0] -= plan.kept
    return [room for room in rooms for _each in range(plan.columns)]
