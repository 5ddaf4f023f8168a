"""A room that makes a sheet, for tests: `make` and `text` of every kind."""

from __future__ import annotations

from chamberwise.engine.model.library import Library
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.paper.sheet import Role, Run, Style, Text, Weight
from chamberwise.exports.printing.order import Made, Order, UnfitError
from chamberwise.exports.typesetting.measuring import Setting

TITLE = Style(20, Weight.BOLD)
LINE = Style(12)
FAR = 5.0
WAYS_OUT = ("Print on A1.", "Shorten the words.")


def make(order: Order) -> Made:
    """Return a page with the title and the steps' names; nobody reads it from afar."""
    if order.distance is not None and order.distance > FAR:
        raise UnfitError(f"type is too small for {order.distance:g} m.", WAYS_OUT)
    frame = Frame(order.ruler, order.control, order.sized.format)
    items, y = [], frame.body.y
    title, *names = words_of(order.library, order.pathway)
    lines = [(f"{title}: {order.control.sheet}", TITLE, Role.TITLE)]
    lines += [(name, LINE, Role.LINE) for name in names]
    for words, style, role in lines:
        runs = (Run(words),)
        height = order.ruler(Setting(runs, style, frame.body.width)).height
        items.append(Text(frame.body.x, y, frame.body.width, height, runs, style, role))
        y += height + 3
    return Made((frame.page(tuple(items), 1, 1),), ("Laminate with a matt film.",))


def words_of(library: Library, pathway: str) -> list[str]:
    about = library.pathways[pathway]
    return [about.title, *about.steps]


def text(words: list[str]) -> str:
    return "\n".join(words)
