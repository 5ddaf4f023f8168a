"""The head of the chart and its first actions."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.legibility.angle import MM_PER_POINT
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Align, Item, Outline, Role, Run, Shape, Tier, Weight
from chamberwise.exports.wall.box import Piece
from chamberwise.exports.wall.content import First, Wall
from chamberwise.exports.wall.pen import HEAD, PLAIN, TITLE, Pen

BORDER = 3.0
LETTERS = "ABCD"
NARROW = 15.0
"""Body sizes: the least width of a column of first actions."""


def head(pen: Pen, content: Wall, width: float) -> Piece:
    """Return the title and the sign at which somebody points at the chart."""
    title = pen.words(
        content.title, width, TITLE, weight=Weight.BOLD, role=Role.TITLE, tier=Tier.ACT,
        of=content.pathway,
    )  # fmt: skip
    runs = (Run("Use when: ", Weight.BOLD), Run(content.use_when))
    use = pen.words(runs, width, HEAD, role=Role.NOTE, of=content.pathway)
    gap = pen.em(0.35)
    return Piece(
        (title.at(0, 0), use.at(0, title.height + gap)), width, title.height + gap + use.height
    )


def first_actions(pen: Pen, content: Wall, width: float) -> Piece:
    """Return the box of first actions, as many in a row as have room."""
    pad = pen.em(0.9)
    tab = _tab(pen)
    columns = max(1, min(len(content.first), int(width / pen.em(NARROW))))
    columns = 2 if columns == 3 and len(content.first) == 4 else columns
    inner = width - 2 * pad
    each = (inner - (columns - 1) * pen.em(1.5)) / columns
    cells = [
        _cell(pen, content.pathway, n, one, each)
        for n, one in zip(LETTERS, content.first, strict=False)
    ]
    items: list[Item] = []
    y = tab.height + pen.em(0.5)
    for start in range(0, len(cells), columns):
        pair = cells[start : start + columns]
        for place, cell in enumerate(pair):
            items += cell.at(pad + place * (each + pen.em(1.5)), y)
        y += max(cell.height for cell in pair) + pen.em(0.6)
    height = y + pen.em(0.2)
    box = Shape(Outline.PANEL, 0, 0, width, height, weight=pen.line(BORDER))
    return Piece((box, *tab.items, *items), width, height)


def _tab(pen: Pen) -> Piece:
    text = "FIRST"
    room = pen.words(text, pen.em(8), HEAD, weight=Weight.BOLD).room.width
    words = pen.words(
        text, room + pen.em(2), HEAD, weight=Weight.BOLD, ink=Ink.WHITE, align=Align.CENTRE,
        role=Role.HEADING, tier=Tier.ACT,
    )  # fmt: skip
    height = words.height + pen.em(0.3)
    ground = Shape(Outline.PANEL, 0, 0, words.width, height, Ink.BLACK, Ink.BLACK, 0)
    return Piece((ground, words.at(0, pen.em(0.15))), words.width, height)


def _cell(pen: Pen, pathway: str, letter: str, one: First, width: float) -> Piece:
    of = f"{pathway}/{one.step}"
    figure = pen.words(
        letter, pen.em(1.2 * pen.glance), pen.glance, weight=Weight.BOLD,
        role=Role.NUMBER, tier=Tier.GLANCE, of=of,
    )  # fmt: skip
    room = width - pen.em(1.25 * pen.glance)
    title = pen.words(
        one.headline, room, pen.glance, weight=Weight.BOLD, role=Role.STEP, tier=Tier.GLANCE, of=of
    )
    items: list[Item] = [figure.at(0, 0), title.at(pen.em(1.25 * pen.glance), 0)]
    y = title.height + pen.em(0.15)
    for runs in _told(one):
        words = pen.words(runs, room, PLAIN, of=of)
        items.append(words.at(pen.em(1.25 * pen.glance), y))
        y += words.height + 0.15 * pen.size * MM_PER_POINT
    return Piece(tuple(items), width, y)


def _told(one: First) -> Iterator[tuple[Run, ...]]:
    """Yield each duty with its tasks, then what the unit has chosen."""
    for task in one.lines:
        yield Run(f"{task.who}: ", Weight.BOLD), Run(task.text)
    for choice in one.choices:
        yield (Run(choice),)
