"""The head of the chart and its first actions."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import TypeAlias

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import Align, Item, Outline, Role, Run, Shape, Tier, Weight
from chamberwise.exports.wall.box import Piece
from chamberwise.exports.wall.content import First, Wall
from chamberwise.exports.wall.pen import HEAD, TITLE, Pen, TooNarrowError, Words

BORDER = 3.0
LETTERS = "ABCD"
Telling: TypeAlias = Callable[[First, float, str], tuple[list[Item], float]]
"""From a first action, a width and a name: everybody's tasks, and their height."""
NARROW = 15.0
"""Body sizes: the least width of a column of first actions."""
BROAD = 24.0
"""Body sizes: the least width of a column of tasks beside another."""
NAMED = 0.45
"""Of the width: the most that names may take of a table of tasks."""


def head(pen: Pen, content: Wall, width: float) -> Piece:
    """Return the title and the sign at which somebody points at the chart."""
    title = pen.words(
        content.title, width, TITLE, weight=Weight.BOLD, role=Role.TITLE, tier=Tier.ACT,
        of=content.pathway,
    )  # fmt: skip
    runs = (Run(_("Use when: "), Weight.BOLD), Run(content.use_when))
    use = pen.words(runs, width, HEAD, role=Role.NOTE, of=content.pathway)
    gap = pen.em(0.35)
    unit, below = _unit(pen, content, title, width)
    top = below + gap
    return Piece((title.at(0, 0), *unit, use.at(0, top)), width, top + use.height)


def _unit(pen: Pen, content: Wall, title: Words, width: float) -> tuple[list[Item], float]:
    """Return the unit's name at the right of the title, or below it, and how far down both reach.

    At the right it stands on the title's last line.
    """
    if not content.unit:
        return [], title.height
    name = pen.words(content.unit, width, HEAD, weight=Weight.BOLD, role=Role.NOTE)
    free = width - title.room.width - pen.em(2.0)
    if name.room.width <= free and name.width < width:
        top = title.height - name.height - pen.em(0.25)
        return [name.at(width - name.width, top)], title.height
    top = title.height + pen.em(0.1)
    return [name.at(0, top)], top + name.height


def first_actions(
    pen: Pen, content: Wall, width: float, columns: int = 0, *, is_table: bool = False
) -> Piece:
    """Return the box of first actions in so many columns, or as many as have room.

    In a table of tasks, everybody's name stands before them in a column of its own.
    """
    pad, between = pen.em(0.9), pen.em(1.5)
    tab = _tab(pen)
    columns = columns or _columns(pen, len(content.first), width)
    each = (width - 2 * pad - (columns - 1) * between) / columns
    tasks = _tabled(pen, content) if is_table else partial(_tasks, pen)
    cells = [
        _cell(pen, content.pathway, n, one, each, tasks)
        for n, one in zip(LETTERS, content.first, strict=False)
    ]
    items, below = in_rows(cells, columns, each + between, pen.em(0.45 + pen.air))
    top = tab.height + pen.em(0.5)
    height = top + below + pen.em(0.8)
    box = Shape(Outline.PANEL, 0, 0, width, height, weight=pen.line(BORDER))
    moved_in = [moved(item, pad, top) for item in items]
    return Piece((box, *tab.items, *moved_in), width, height)


def _columns(pen: Pen, count: int, width: float) -> int:
    columns = max(1, min(count, int(width / pen.em(NARROW))))
    return 2 if columns == 3 and count == 4 else columns


def in_rows(
    pieces: Sequence[Piece], columns: int, step: float, gap: float
) -> tuple[list[Item], float]:
    """Return pieces side by side in rows, so far apart, and how high they are together."""
    items: list[Item] = []
    y = 0.0
    for start in range(0, len(pieces), columns):
        row = pieces[start : start + columns]
        y += gap if start else 0.0
        for place, piece in enumerate(row):
            items += piece.at(place * step, y)
        y += max(piece.height for piece in row)
    return items, y


def _tab(pen: Pen) -> Piece:
    text = _("FIRST")
    room = pen.words(text, pen.em(8), HEAD, weight=Weight.BOLD).room.width
    words = pen.words(
        text, room + pen.em(2), HEAD, weight=Weight.BOLD, ink=Ink.WHITE, align=Align.CENTRE,
        role=Role.HEADING, tier=Tier.ACT,
    )  # fmt: skip
    height = words.height + pen.em(0.3)
    ground = Shape(Outline.PANEL, 0, 0, words.width, height, Ink.BLACK, Ink.BLACK, 0)
    return Piece((ground, words.at(0, pen.em(0.15))), words.width, height)


def _cell(pen: Pen, pathway: str, letter: str, one: First, width: float, tasks: Telling) -> Piece:
    of = f"{pathway}/{one.step}"
    figure = pen.words(
        letter, pen.em(1.2 * pen.glance), pen.glance, weight=Weight.BOLD,
        role=Role.NUMBER, tier=Tier.GLANCE, of=of,
    )  # fmt: skip
    room = width - pen.em(1.25 * pen.glance)
    title = pen.words(
        one.headline, room, pen.glance, weight=Weight.BOLD, role=Role.STEP, tier=Tier.GLANCE, of=of
    )
    start, below = pen.em(1.25 * pen.glance), title.height + pen.em(pen.air)
    told, high = tasks(one, room, of)
    items = [figure.at(0, 0), title.at(start, 0), *(moved(each, start, below) for each in told)]
    return Piece(tuple(items), width, below + high)


def _tasks(pen: Pen, one: First, room: float, of: str) -> tuple[list[Item], float]:
    """Return everybody's tasks side by side where there is room for it, and their height."""
    told = tuple(_told(one))
    columns = max(1, min(len(told), int(room / pen.em(BROAD * pen.task))))
    between = pen.em(1.5)
    each = (room - (columns - 1) * between) / columns
    pieces = []
    for runs in told:
        words = pen.words(runs, each, pen.task, of=of)
        pieces.append(Piece((words.at(0, 0),), each, words.height))
    return in_rows(pieces, columns, each + between, pen.em(pen.air))


def _tabled(pen: Pen, content: Wall) -> Telling:
    """Return how tasks are told in two columns: names as wide as the longest, then the tasks."""
    names = dict.fromkeys(f"{task.who}:" for one in content.first for task in one.lines)
    wide = pen.em(1e3)
    rooms = [pen.words(name, wide, pen.task, weight=Weight.BOLD).room for name in names]
    named = max((room.width for room in rooms), default=0.0) + pen.em(0.2)
    return partial(_table, pen, named)


def _table(pen: Pen, named: float, one: First, room: float, of: str) -> tuple[list[Item], float]:
    """Raise `TooNarrowError` where names would take more than their share."""
    start = named + pen.em(0.6)
    if start > room * NAMED:
        raise TooNarrowError(one.headline)
    items: list[Item] = []
    y = 0.0
    for task in one.lines:
        name = pen.words(f"{task.who}:", named, pen.task, weight=Weight.BOLD, of=of)
        words = pen.words(task.text, room - start, pen.task, of=of)
        items += [name.at(0, y), words.at(start, y)]
        y += words.height + pen.em(pen.air)
    for choice in one.choices:
        words = pen.words(choice, room, pen.task, of=of)
        items.append(words.at(0, y))
        y += words.height + pen.em(pen.air)
    return items, max(0.0, y - pen.em(pen.air))


def _told(one: First) -> Iterator[tuple[Run, ...]]:
    """Yield each duty with its tasks, then what the unit has chosen."""
    for task in one.lines:
        yield Run(f"{task.who}: ", Weight.BOLD), Run(task.text)
    for choice in one.choices:
        yield (Run(choice),)
