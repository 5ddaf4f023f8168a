"""The head of the first page: title, summary, key to the symbols; and the lists at the end."""

from __future__ import annotations

import re
from collections.abc import Sequence

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.full.content import FullPathway
from chamberwise.exports.full.piece import Piece, Setter, stacked
from chamberwise.exports.full.words import CHOICES, open_choice_runs, source_text
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import Item, Outline, Role, Run, Shape, Style, Tier, Weight

KEY = (
    (Outline.DECISION, N_("Question or branch")),
    (Outline.PROCESS, N_("Action")),
    (Outline.PREDEFINED_PROCESS, N_("Handover to another chart")),
    (Outline.TERMINATOR, N_("Start or end")),
    (Outline.CONNECTOR, N_("Go to that step")),
)
SOURCES = N_("Sources")
HOW = N_(
    "Begin at Start. Read each step aloud and do it. Follow the arrow down, or go to the "
    "step whose number stands in the circle; p. tells its page. Unknown is an answer of "
    "its own."
)
ADDRESS = 38
"""Letters of small type that surely fit a column."""
NUMBER = 8.0
"""The column of numbers of a list."""


def head(setter: Setter, content: FullPathway, width: float) -> Piece:
    """Return title, summary, how to read, and the key, across the page."""
    measure = min(width, setter.mm(120.0))
    title = setter.text(content.title, setter.style(22, Weight.BOLD), width, Role.TITLE, content.id)
    summary = setter.text(content.summary, setter.style(11), measure, Role.LINE)
    how = setter.text(_(HOW), setter.body, measure, Role.LINE)
    return stacked([title, summary, how, _key(setter, width)], setter.mm(2.4))


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
        text = setter.text(_(words), setter.style(9.2), cell - mm(14.5), Role.NOTE)
        items.append(moved(shape, x, y))
        items += text.at(x + mm(13.0), y + (row - mm(2.0) - text.height) / 2)
    rows = -(-len(KEY) // columns)
    return Piece(rows * row, tuple(items))


def choices(setter: Setter, content: FullPathway, width: float) -> list[Piece]:
    """Return a heading and the numbered list of choices that are not set."""
    rows = [
        (str(choice.number), open_choice_runs(choice, steps))
        for choice, steps in content.open_choices
    ]
    return _listed(setter, _(CHOICES), rows, setter.style(9.2), width)


def sources(setter: Setter, content: FullPathway, width: float) -> list[Piece]:
    """Return a heading and the numbered list of sources."""
    rows = [(str(each.number), (Run(source_text(each)),)) for each in content.sources]
    return _listed(setter, _(SOURCES), rows, setter.note, width)


def _listed(
    setter: Setter,
    title: str,
    rows: Sequence[tuple[str, tuple[Run, ...]]],
    style: Style,
    width: float,
) -> list[Piece]:
    if not rows:
        return []
    heading = setter.text(title, setter.style(15, Weight.BOLD), width, Role.HEADING)
    return [heading, *(_row(setter, number, runs, style, width) for number, runs in rows)]


def _row(setter: Setter, number: str, runs: tuple[Run, ...], style: Style, width: float) -> Piece:
    bold, column = setter.style(9.2, Weight.BOLD), setter.mm(NUMBER)
    mark = setter.text(number, bold, column, Role.NUMBER, tier=Tier.REFER)
    text = setter.text(runs, style, width - column, Role.NOTE)
    items = (*mark.items, *text.at(column, 0.0))
    return Piece(text.height, items, text.over if _longest(runs) > ADDRESS else 0.0, text.word)


def _longest(runs: tuple[Run, ...]) -> int:
    """Letters that stay on one line: addresses go on in the next where they may be broken."""
    words = re.split(r"[\s\u200b]", "".join(run.text for run in runs))
    return max((len(each) for each in words), default=0)
