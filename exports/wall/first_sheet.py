"""The first of several sheets: what is done from memory, whom to call, what is dangerous.

It stands alone: nobody has to look further before the first actions are done.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import partial
from typing import NamedTuple

from chamberwise.exports.control.frame import Body
from chamberwise.exports.legibility.angle import size_for
from chamberwise.exports.paper.sheet import Item
from chamberwise.exports.typesetting.guessing import Asked, Guess, measured
from chamberwise.exports.wall.box import Piece
from chamberwise.exports.wall.content import Wall
from chamberwise.exports.wall.edges import going_on
from chamberwise.exports.wall.front import NARROW, first_actions, head
from chamberwise.exports.wall.growing import aired, grown, grown_tasks
from chamberwise.exports.wall.panels import calls, calls_and_notes, dangers
from chamberwise.exports.wall.pen import LEAST_SIZE, SMALL, STEP, Pen, TooNarrowError

ACROSS = 3.0
"""Metres from which the first actions are to be read."""
BESIDE = 0.5
"""Metres from which tasks are to be read at least: at arm's length."""
LEAST_GLANCE = 2.2
"""Times what is smaller: from that on the first actions grow with it, on large paper."""


CLEARLY = 1.1
"""Times: how much larger all else is where names do not stand in a column of their own."""
LEAST_TASK = 1.3
"""Times calls and dangers: tasks, before these grow too."""


class FirstSheet(NamedTuple):
    """The sheet, the pen of its words, and the dangers where they need a sheet of their own."""

    piece: Piece
    pen: Pen
    apart: Piece | None


class _Plan(NamedTuple):
    columns: int
    has_notes: bool
    is_table: bool = False
    """Whether tasks stand behind a column of names."""


def first_sheet(content: Wall, body: Body, guess: Guess, least: float) -> FirstSheet:
    """Return the sheet with first actions as large as it holds, then with tasks as large.

    Raises `TooNarrowError` where the smallest letters do not fit.
    """
    for pen, plan in _tried(content, body, guess, least):
        pen = replace(pen, ruler=measured(guess, partial(_laid, content, body, pen, plan)))
        pen = aired(pen, partial(_fits, content, body, plan))
        piece = _arranged(content, body, pen, plan)
        if piece is not None:
            apart = None if plan.has_notes else dangers(pen, content, body.width)
            return FirstSheet(piece, pen, apart)
    raise TooNarrowError(content.title)


def say_first_sheet(content: Wall, body: Body, pen: Pen) -> None:
    """Say all that stands on the sheet, for a guess to meet its words."""
    for is_table in (False, True):
        _arranged(content, body, pen, _Plan(1, True, is_table))


def _tried(content: Wall, body: Body, guess: Guess, least: float) -> Iterator[tuple[Pen, _Plan]]:
    """Yield pens that fit by guess, the best first."""
    count = max(1, len(content.first))
    plans = [_Plan(1, True, is_table=True)]
    plans += [_Plan(columns, True) for columns in sorted({1, min(2, count), count})]
    plans += [each._replace(has_notes=False) for each in plans]
    start = max(least, size_for(BESIDE) / SMALL)
    for steps in range(round(start / STEP + 0.49), round(max(least, LEAST_SIZE) / STEP - 0.49), -1):
        found = [
            (pen, plan)
            for plan in plans
            if body.width / plan.columns >= Pen(guess, steps * STEP).em(NARROW)
            for pen in _larger(content, body, Pen(guess, steps * STEP), plan)
        ]
        for pen, plan in sorted(found, key=lambda each: _worth(*each), reverse=True):
            yield grown_tasks(pen, partial(_fits, content, body, plan)), plan


def _worth(pen: Pen, plan: _Plan) -> tuple[bool, float, float]:
    """Return what is wanted of the sheet: the dangers on it, then its first actions, its tasks."""
    glance = min(pen.points(pen.glance), size_for(ACROSS))
    return plan.has_notes, glance, pen.size * (CLEARLY if plan.is_table else 1.0)


def _grown(content: Wall, body: Body, pen: Pen, plan: _Plan) -> Pen | None:
    """Return a pen with first actions as large as there is room for; `None` where nothing fits."""
    if _arranged(content, body, pen, plan) is None:
        return None
    most = size_for(ACROSS) / pen.size
    return grown(pen, most, partial(_fits, content, body, plan))


def _larger(content: Wall, body: Body, pen: Pen, plan: _Plan) -> Iterator[Pen]:
    """Yield pens with first actions as large as fits, then with all else larger beside those."""
    larger = _grown(content, body, pen, plan)
    while larger is not None:
        yield larger
        if not content.first:
            return
        size = larger.size + STEP
        glance = max(LEAST_GLANCE, larger.size * larger.glance / size)
        larger = replace(larger, size=size, glance=glance, task=LEAST_TASK)
        if _arranged(content, body, larger, plan) is None:
            return


def _fits(content: Wall, body: Body, plan: _Plan, pen: Pen) -> bool:
    return _arranged(content, body, pen, plan) is not None


def _laid(content: Wall, body: Body, pen: Pen, plan: _Plan, asked: Asked) -> None:
    _arranged(content, body, replace(pen, ruler=asked), plan)


def _arranged(content: Wall, body: Body, pen: Pen, plan: _Plan) -> Piece | None:
    try:
        return _placed(content, body, pen, plan)
    except TooNarrowError:
        return None


def _placed(content: Wall, body: Body, pen: Pen, plan: _Plan) -> Piece | None:
    gap = pen.em(1.1)
    parts = [head(pen, content, body.width)]
    if content.first:
        parts.append(first_actions(pen, content, body.width, plan.columns, is_table=plan.is_table))
    panels = calls_and_notes if plan.has_notes else calls
    foot = panels(pen, content, body.width)
    words = going_on(body, pen, 1)
    used = sum(part.height + gap for part in parts)
    if used + words.height + gap + foot.height > body.height:
        return None
    items: list[Item] = []
    y = 0.0
    for part in parts:
        items += part.at(0, y)
        y += part.height + gap
    spare = body.height - foot.height - words.height - gap
    items += [*foot.at(0, spare), words.at(0, body.height - words.height)]
    return Piece(tuple(items), body.width, body.height)
