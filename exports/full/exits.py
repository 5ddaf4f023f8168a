"""The ways out of a step: rows that end in a numbered circle, and labels on an arrow down."""

from __future__ import annotations

from collections.abc import Mapping

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.full.content import ON, Kind, Step, Way
from chamberwise.exports.full.piece import Piece, Setter
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import (
    Arrow,
    Item,
    Outline,
    Role,
    Run,
    Shape,
    Weight,
)

RAIL = 11.5
"""Width of the strip at the left in which numbers stand and arrows run down, at body type 10."""
CIRCLE = 7.6
ARROW = 5.0
APART = 0.7
"""Between the words of two answers, besides what is between any two lines."""
PAGE = 11.0
"""Room for "p. 999"."""
TO = 12.0
"""Room for "to 999"."""


def exit_row(setter: Setter, step: Step, way: Way, width: float, pages: Mapping[int, int]) -> Piece:
    """Return label, arrow, connector and, where the target is on another page, its page."""
    circle, of = setter.mm(CIRCLE), f"{step.of}/{way.id}"
    label_width = width - setter.mm(ARROW + CIRCLE + PAGE + 2.0)
    label = _label(setter, way, label_width, of)
    height = max(label.height + setter.mm(APART), circle)
    middle = height / 2
    left = label_width + setter.mm(1.0)
    right = left + setter.mm(ARROW)
    ring = Shape(
        Outline.CONNECTOR, right, middle - circle / 2, circle, circle, weight=setter.mm(0.35), of=of
    )
    items: list[Item] = [
        *label.at(0.0, (height - label.height) / 2),
        Arrow(((left, middle), (right, middle)), setter.mm(0.5), of=of),
        *setter.centred(str(way.to), setter.style(10, Weight.BOLD), ring, Role.NUMBER, of),
    ]
    here, there = pages.get(step.number), pages.get(way.to)
    if there is not None and there != here:
        page = page_word(setter, there, of)
        items += page.at(right + circle + setter.mm(1.0), middle - page.height / 2)
    return Piece(height, tuple(items), label.over, label.word)


def page_word(setter: Setter, page: int, of: str) -> Piece:
    """Return on which page to go on."""
    return setter.text(
        _("p.\u00a0{page}").format(page=page), setter.note, setter.mm(PAGE), Role.NOTE, of
    )


def _label(setter: Setter, way: Way, width: float, of: str) -> Piece:
    style = setter.style(10, Weight.MEDIUM)
    label = setter.text(way.label, style, width, Role.ANSWER, of)
    if not way.sign:
        return label
    sign = setter.text(way.sign, setter.note, width, Role.NOTE, of)
    gap = setter.mm(0.4)
    items = (*label.items, *sign.at(0.0, label.height + gap))
    worst = label if label.over >= sign.over else sign
    return Piece(label.height + gap + sign.height, items, worst.over, worst.word)


def down_row(setter: Setter, step: Step, way: Way, width: float, place: int) -> Piece:
    """Return the label beside an arrow down, joined to it by a tick that reaches left."""
    of = f"{step.of}/{way.id}"
    label = _label(setter, way, width - setter.mm(TO), of)
    middle = setter.mm(2.1)
    tick = Arrow(
        ((-setter.mm(1.2), middle), (-setter.mm(RAIL / 2), middle)),
        setter.mm(0.5),
        has_head=False,
        of=of if place else "",
    )
    to = setter.text(
        (Run(_("to\u00a0{to}").format(to=way.to)),), setter.body, setter.mm(TO - 1), Role.NUMBER, of
    )
    items = (
        *label.items,
        tick,
        *(moved(each, width - setter.mm(TO - 1), 0.0) for each in to.items),
    )
    return Piece(label.height, items, label.over, label.word)


def split_ways(step: Step, *, is_down: bool) -> tuple[tuple[Way, ...], tuple[Way, ...]]:
    """Return the ways that go straight down to the next step, and those that jump.

    A bound never goes straight down: it is an exit beside the way on.
    """
    down = tuple(way for way in step.ways if is_down and goes_next(step, way))
    return down, tuple(way for way in step.ways if way not in down)


def goes_next(step: Step, way: Way) -> bool:
    """Return whether a way leads to the step printed next and may run straight down to it.

    Answers need a label beside the arrow, and the arrow has room beside it only below a diamond.
    """
    has_room = way.id == ON or step.kind in (Kind.QUESTION, Kind.BRANCH)
    return has_room and way.to == step.number + 1 and way.id != "after that"


def is_labelled(way: Way) -> bool:
    """Return whether a way needs its label beside an arrow down."""
    return way.id != ON
