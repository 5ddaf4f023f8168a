"""The chart on its paper: as large as it fits, in one column or two."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import NamedTuple

from chamberwise.exports.control.frame import Body
from chamberwise.exports.paper.sheet import Item
from chamberwise.exports.typesetting.guessing import Asked, Guess, Meeting, measured
from chamberwise.exports.typesetting.measuring import Ruler
from chamberwise.exports.typesetting.searching import most
from chamberwise.exports.wall.box import Piece
from chamberwise.exports.wall.columns import Flow
from chamberwise.exports.wall.content import Wall
from chamberwise.exports.wall.front import NARROW, first_actions, head
from chamberwise.exports.wall.growing import grown
from chamberwise.exports.wall.panels import panels
from chamberwise.exports.wall.pen import LEAST_SIZE, MOST_SIZE, STEP, Pen, TooNarrowError

MOST_GLANCE = 2.8
CLEARLY = 1.2
"""Times: how much larger letters are in narrow columns, if these are; with few words on a line."""


class Plan(NamedTuple):
    """The share of the width that the first actions have, and the columns of the rows."""

    share: float
    columns: int


PLANS = tuple(
    Plan(share, columns)
    for share in (0.0, 0.2, 0.24, 0.28, 0.32, 0.36, 0.4)
    for columns in (1, 2, 3)
)


@dataclass(frozen=True, slots=True)
class Placed:
    """A chart that fits: its items and its body size in points."""

    items: tuple[Item, ...]
    size: float
    glance: float
    """The size of the first actions, in points."""


def place(content: Wall, body: Body, ruler: Ruler) -> Placed | None:
    """Return the chart in the largest letters that fit; `None` when the least do not.

    Sizes are tried by guess; what is returned was measured.
    """
    guess = Guess(ruler)
    guess.meet(partial(_asked, content, body))
    whole, *narrow = [(_most(content, body, guess, plan), plan) for plan in PLANS]
    count, plan = max(narrow, key=lambda each: each[0])
    if whole[0] * STEP >= LEAST_SIZE and count < whole[0] * CLEARLY:
        count, plan = whole
    while count * STEP >= LEAST_SIZE:
        pen = grown(
            Pen(guess, count * STEP),
            MOST_GLANCE,
            lambda larger: _arranged(content, body, larger, plan) is not None,
        )
        pen = replace(pen, ruler=measured(guess, partial(_laid, content, body, pen, plan)))
        piece = _arranged(content, body, pen, plan)
        if piece is not None:
            items = tuple(piece.at(body.x, body.y))
            return Placed(items, pen.size, pen.points(pen.glance))
        count -= 1
    return None


def _most(content: Wall, body: Body, guess: Guess, plan: Plan) -> int:
    """Return the most steps of size at which everything fits by guess; one less than the least."""

    def fits(steps: int) -> bool:
        return _arranged(content, body, Pen(guess, steps * STEP), plan) is not None

    return most(fits, int(LEAST_SIZE / STEP), int(MOST_SIZE / STEP))


def _asked(content: Wall, body: Body, meeting: Meeting) -> None:
    _arranged(content, body, Pen(meeting, LEAST_SIZE), PLANS[0])


def _laid(content: Wall, body: Body, pen: Pen, plan: Plan, asked: Asked) -> None:
    _arranged(content, body, replace(pen, ruler=asked), plan)


def _arranged(content: Wall, body: Body, pen: Pen, plan: Plan) -> Piece | None:
    """Return the whole chart at one size; the first actions and panels have a share of the width.

    A share of nothing stands for everything below each other.
    """
    try:
        arrange = _wide if plan.share else _tall
        return arrange(content, body, pen, plan)
    except TooNarrowError:
        return None


def _tall(content: Wall, body: Body, pen: Pen, plan: Plan) -> Piece | None:
    """Everything below each other."""
    gap = pen.em(1.1)
    parts = [head(pen, content, body.width), first_actions(pen, content, body.width)]
    parts = parts if content.first else parts[:1]
    foot = panels(pen, content, body.width)
    used = sum(part.height + gap for part in parts) + foot.height + gap
    rows = _columns(pen, content, body.width, body.height - used, plan.columns)
    if rows is None:
        return None
    items: list[Item] = []
    y = 0.0
    for part in parts:
        items += part.at(0, y)
        y += part.height + gap
    items += rows.at(0, y)
    items += foot.at(0, body.height - foot.height)
    return Piece(tuple(items), body.width, body.height)


def _wide(content: Wall, body: Body, pen: Pen, plan: Plan) -> Piece | None:
    """The first actions and the panels at the left, the rows beside them."""
    gap = pen.em(2.0)
    left = (body.width - gap) * plan.share
    if content.first and left < pen.em(NARROW):
        raise TooNarrowError(content.title)
    top = head(pen, content, body.width)
    start = top.height + pen.em(1.1)
    room = body.height - start
    firsts = first_actions(pen, content, left) if content.first else Piece((), left, 0.0)
    foot = panels(pen, content, left)
    if firsts.height + foot.height + pen.em(1.1) > room:
        return None
    rows = _columns(pen, content, body.width - gap - left, room, plan.columns)
    if rows is None:
        return None
    items = [
        *top.items,
        *firsts.at(0, start),
        *foot.at(0, body.height - foot.height),
        *rows.at(left + gap, start),
    ]
    return Piece(tuple(items), body.width, body.height)


def _columns(pen: Pen, content: Wall, width: float, room: float, count: int) -> Piece | None:
    """Return all rows in columns side by side; `None` where they need more room."""
    between = pen.em(2.2)
    each = (width - (count - 1) * between) / count
    pieces = Flow(pen, content, each).filled([room] * count)
    if pieces is None:
        return None
    items = [
        item for place, piece in enumerate(pieces) for item in piece.at(place * (each + between), 0)
    ]
    return Piece(tuple(items), width, max(piece.height for piece in pieces))


def longest(content: Wall) -> Sequence[str]:
    """Return the three longest texts of the rows: the first to shorten."""
    texts = [one.text for one in content.rows]
    texts += [side.label for one in content.rows for side in one.sides]
    texts += [task.text for one in content.first for task in one.lines]
    return sorted(texts, key=len, reverse=True)[:3]
