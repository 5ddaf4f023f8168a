"""Marks by which cards are cut out and folded: cuts are solid, folds dashed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from chamberwise.exports.control.frame import Body
from chamberwise.exports.flow.block import Area
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Arrow, Item, Role, Run, Style, Text, Tier
from chamberwise.exports.typesetting.measuring import Ruler, Setting

STRIP = 5.5
"""Millimetres above the cards for the marks and what they mean; below them for marks alone."""
MARK = 3.0
STYLE = Style(9.2, ink=Ink.GREY, pitch=1.25)


def card_areas(body: Body, columns: int, rows: int) -> list[Area]:
    """Return the places of cards that share their edges, row by row."""
    width = body.width / columns
    height = (body.height - STRIP - MARK) / rows
    top = body.y + STRIP
    return [
        Area(body.x + column * width, top + row * height, width, height)
        for row in range(rows)
        for column in range(columns)
    ]


def cut_marks(ruler: Ruler, areas: list[Area], said: str) -> list[Item]:
    """Return solid marks outside the corners of the whole, and at every inner edge cut along."""
    left, top, right, bottom = _around(areas)
    room = ruler(Setting((Run(said),), STYLE, right - left - 8))
    y = top - STRIP + 0.4
    items: list[Item] = [
        Text(left + 4, y, right - left - 8, room.height, (Run(said),), STYLE, Role.NOTE, Tier.REFER)
    ]
    for x in (left, right):
        items += [_line((x, top - MARK), (x, top - 0.6)), _line((x, bottom + 0.6), (x, bottom + 2))]
    for level in (top, bottom):
        items += [
            _line((left - MARK, level), (left - 0.6, level)),
            _line((right + 0.6, level), (right + MARK, level)),
        ]
    return items


def inner_edges(areas: list[Area], *, folded: bool) -> Iterator[Item]:
    """Yield lines between cards: dashed where they are folded, solid where they are cut."""
    left, top, right, bottom = _around(areas)
    ink = Ink.RULE
    for x in sorted({area.x for area in areas} - {left}):
        yield Arrow(((x, top), (x, bottom)), 0.25, ink, has_head=False, is_dashed=folded)
    for y in sorted({area.y for area in areas} - {top}):
        yield Arrow(((left, y), (right, y)), 0.25, ink, has_head=False, is_dashed=folded)


def _around(areas: Iterable[Area]) -> tuple[float, float, float, float]:
    known = [*areas]
    return (
        min(each.x for each in known),
        min(each.y for each in known),
        max(each.x + each.width for each in known),
        max(each.y + each.height for each in known),
    )


def _line(start: tuple[float, float], end: tuple[float, float]) -> Item:
    return Arrow((start, end), 0.25, Ink.BLACK, has_head=False)
