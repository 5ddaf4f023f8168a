"""The head of the first page: title, summary, key to the symbols; and the safety notes."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from chamberwise.exports.full.cautions import caution
from chamberwise.exports.full.content import FullPathway
from chamberwise.exports.full.piece import Piece, Setter, moved, stacked
from chamberwise.exports.full.words import source_text
from chamberwise.exports.paper.sheet import Item, Outline, Role, Run, Shape, Weight

KEY = (
    (Outline.DECISION, "Question or branch"),
    (Outline.PROCESS, "Action"),
    (Outline.PREDEFINED_PROCESS, "Handover to another chart"),
    (Outline.TERMINATOR, "Start or end"),
    (Outline.CONNECTOR, "Go to that step"),
)
SAFETY = "Safety notes: every danger of this pathway"
SOURCES = "Sources"
HOW = (
    "Begin at Start. Read each step aloud and do it. Follow the arrow down, or go to the step "
    "whose number stands in the circle. Not known never counts as no."
)
PAIR = 150.0
"""From this width on, short paragraphs stand two side by side."""
LANE = 6.0
ADDRESS = 38
"""Letters of small type that surely fit half a column."""


def head(setter: Setter, content: FullPathway, width: float) -> Piece:
    """Return title, summary, how to read, and the key, across the page."""
    measure = min(width, setter.mm(115.0))
    title = setter.text(content.title, setter.style(22, Weight.BOLD), width, Role.TITLE, content.id)
    summary = setter.text(content.summary, setter.style(11), measure, Role.LINE)
    how = setter.text(HOW, setter.body, measure, Role.LINE)
    return stacked([title, summary, how, _key(setter, width)], setter.mm(3.0))


def _key(setter: Setter, width: float) -> Piece:
    """Symbols with their meaning, as many beside each other as there is room for."""
    mm = setter.mm
    cell, row = mm(36.5), mm(10.5)
    columns = max(1, min(len(KEY), int(width // cell)))
    items: list[Item] = []
    for place, (outline, words) in enumerate(KEY):
        x, y = (place % columns) * cell, (place // columns) * row
        is_small = outline in (Outline.DECISION, Outline.CONNECTOR)
        wide, high = (mm(7.0), mm(7.0)) if is_small else (mm(11.0), mm(6.0))
        shape = Shape(outline, (mm(11.0) - wide) / 2, (row - mm(2.0) - high) / 2, wide, high)
        text = setter.text(words, setter.style(9.2), cell - mm(14.5), Role.NOTE)
        items.append(moved(shape, x, y))
        items += text.at(x + mm(13.0), y + (row - mm(2.0) - text.height) / 2)
    rows = -(-len(KEY) // columns)
    return Piece(rows * row, tuple(items))


def safety(setter: Setter, content: FullPathway, width: float) -> list[Piece]:
    """Return a heading and every danger once, with the steps that tell it again."""

    def one(place: int, wide: float) -> Piece:
        danger = content.dangers[place]
        told = ", ".join(str(each) for each in danger.steps)
        where = f"Step\u00a0{told}." if len(danger.steps) == 1 else f"Steps\u00a0{told}."
        return caution(setter, "danger", danger.harm, danger.instead, where, wide)

    return _listed(setter, SAFETY, len(content.dangers), one, width)


def sources(setter: Setter, content: FullPathway, width: float) -> list[Piece]:
    """Return a heading and the numbered list of sources."""

    def one(place: int, wide: float) -> Piece:
        source = content.sources[place]
        number = setter.text(
            (Run(str(source.number), Weight.BOLD),), setter.style(9.2), setter.mm(9.0), Role.NUMBER
        )
        text = setter.text(source_text(source), setter.note, wide - setter.mm(10.0), Role.NOTE)
        items = (*number.items, *text.at(setter.mm(10.0), 0.0))
        over = text.over if _longest(source_text(source)) > ADDRESS else 0.0
        return Piece(text.height, items, over, text.word)

    return _listed(setter, SOURCES, len(content.sources), one, width)


def _longest(text: str) -> int:
    """Letters that stay on one line: addresses go on in the next where they may be broken."""
    return max((len(each) for each in re.split(r"[\s\u200b]", text)), default=0)


def _listed(
    setter: Setter, title: str, count: int, one: Callable[[int, float], Piece], width: float
) -> list[Piece]:
    if not count:
        return []
    heading = setter.text(title, setter.style(15, Weight.BOLD), width, Role.HEADING)
    half = (width - setter.mm(LANE)) / 2
    if width >= setter.mm(PAIR):
        singles = [one(place, half) for place in range(count)]
        if not any(each.over for each in singles):
            return [heading, *_pairs(singles, half + setter.mm(LANE))]
    return [heading, *(one(place, width) for place in range(count))]


def _pairs(singles: Sequence[Piece], step: float) -> list[Piece]:
    found = []
    for place in range(0, len(singles), 2):
        items: list[Item] = []
        for side, piece in enumerate(singles[place : place + 2]):
            items += piece.at(side * step, 0.0)
        height = max(each.height for each in singles[place : place + 2])
        found.append(Piece(height, tuple(items)))
    return found
