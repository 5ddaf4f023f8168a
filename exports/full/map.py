"""The map: each phase as a small drawing of numbered symbols. Far arrows are told by their number.

No arrow crosses another or a symbol: one that would is told as a number beside its symbol.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import NamedTuple

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.full.block import OUTLINES, is_decision
from chamberwise.exports.full.content import FullPathway
from chamberwise.exports.full.folding import Phase, Symbol, phases
from chamberwise.exports.full.piece import Piece, Setter
from chamberwise.exports.layout.content import Graph, Layout, Link, Node
from chamberwise.exports.layout.margins import spaced_coordinates
from chamberwise.exports.layout.tangles import tangled
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import (
    Arrow,
    Item,
    Outline,
    Role,
    Run,
    Shape,
    Style,
    Text,
    Tier,
    Weight,
)

TITLE = N_("Map")
BEGIN = N_("Start")
LEGEND = N_("A number without a symbol: go on at that step.")
LEAST = 34.0
"""Width of a drawing at least, for its title."""
HIGHEST = 0.4
"""Of a page; a higher drawing is cut in two."""
MOST = 24
"""Symbols; a longer phase is drawn in stretches."""
LANE = 7.0
IN_LINE = 3
LINE = 4.2
DIGIT = 2.3
"""Room for a letter of a number, and more than it needs."""
ASIDE = " aside"
"""Ends the name of a number that is told beside a symbol."""


class Shelf(NamedTuple):
    """Drawings side by side, and how many symbols they hold."""

    piece: Piece
    symbols: int


class Drawing(NamedTuple):
    """A phase as drawn."""

    piece: Piece
    width: float
    symbols: int


def map_title(setter: Setter, width: float) -> Piece:
    """Return the heading."""
    return setter.text(_(TITLE), setter.style(15, Weight.BOLD), width, Role.HEADING, "map")


def map_legend(setter: Setter, width: float) -> Piece:
    """Return what stands below the map."""
    return setter.text(_(LEGEND), setter.note, width, Role.NOTE, "map")


def map_shelves(
    setter: Setter, content: FullPathway, width: float, height: float
) -> tuple[Shelf, ...] | None:
    """Return the drawings of all phases in rows, or nothing where even one symbol is too wide."""
    drawings: list[Drawing] = []
    for phase in phases(content):
        drawn = _fitting(setter, phase, content.start, width, height * HIGHEST)
        if drawn is None:
            return None
        drawings += drawn
    return tuple(_shelf(setter, row) for row in _rows(drawings, width, setter.mm(LANE)))


def collect_map(setter: Setter, content: FullPathway) -> None:
    """Ask for every text of the map whose room has to be known."""
    for phase in phases(content):
        for symbol in phase.symbols:
            _line(setter, symbol.name, _style(setter))
        _line(setter, phase.title, setter.style(9.2, Weight.BOLD))
    _line(setter, _(BEGIN), _style(setter))


def _fitting(
    setter: Setter, phase: Phase, start: int, width: float, height: float
) -> list[Drawing] | None:
    """Draw a phase in one or, where it does not fit, in as few stretches as it takes."""
    for count in range(-(-len(phase.symbols) // MOST), len(phase.symbols) + 1):
        parts = [_narrow(setter, each, start, width, height) for each in phase.parts(count)]
        drawn = [each for each in parts if each]
        if len(drawn) == len(parts):
            return drawn
    return None


def _narrow(
    setter: Setter, phase: Phase, start: int, width: float, height: float
) -> Drawing | None:
    for is_across in (True, False):
        drawn = _drawn(setter, phase, start, is_across, width)
        if drawn.width <= width and drawn.piece.height <= height:
            return drawn
    return None


def _drawn(setter: Setter, phase: Phase, start: int, is_across: bool, most: float) -> Drawing:
    phase, layout = _untangled(setter, phase, start, is_across)
    told = dict(phase.told)
    symbols = {each.name: each for each in phase.symbols}
    items: list[Item] = [
        Arrow(points, setter.mm(0.4), of="map")
        for _link, points in layout.routes
        if len(points) > 1
    ]
    for (name, wide, high, _diamond), x, y in layout.placed:
        if name.endswith(ASIDE):
            numbers = told[name.removesuffix(ASIDE)]
            items.append(moved(_aside(setter, numbers, wide, high), x, y))
        else:
            outline = _outline(symbols[name]) if name in symbols else Outline.TERMINATOR
            shape = Shape(outline, x, y, wide, high, weight=setter.mm(0.3))
            items += setter.centred(name, _style(setter), shape, Role.NUMBER, "map", Tier.REFER)
    title = _title(setter, phase, most)
    width = max(layout.width, setter.mm(LEAST), title.width)
    rule = Arrow(((0.0, 0.0), (width, 0.0)), setter.mm(0.4), Ink.BLACK, has_head=False)
    top = setter.mm(1.4) + title.height + setter.mm(0.8)
    named = replace(title, y=setter.mm(1.4))
    found = (rule, named, *(moved(each, 0.0, top) for each in items))
    shapes = sum(isinstance(each, Shape) for each in items)
    return Drawing(Piece(top + layout.height, found), width, shapes)


def _title(setter: Setter, phase: Phase, most: float) -> Text:
    style = setter.style(9.2, Weight.BOLD)
    title = _line(setter, phase.title, style)
    if title.width <= most:
        return title
    (text,) = setter.text(phase.title, style, most, Role.NOTE, "map").items
    assert isinstance(text, Text)
    return text


def _untangled(setter: Setter, phase: Phase, start: int, is_across: bool) -> tuple[Phase, Layout]:
    """Lay out, and tell the longest tangled arrow as a number, until none is tangled."""
    while True:
        layout = _laid(setter, phase, start, is_across)
        drawn = [link for link in tangled(layout) if tuple(link) in phase.links]
        if not drawn:
            return phase, layout
        phase = phase.without(max(drawn, key=lambda link: _reach(layout, link)))


def _reach(layout: Layout, link: Link) -> float:
    where = {place.node.name: place for place in layout.placed}
    one, other = where[link.start], where[link.end]
    return abs(one.x - other.x) + abs(one.y - other.y)


def _laid(setter: Setter, phase: Phase, start: int, is_across: bool) -> Layout:
    mm = setter.mm
    nodes: list[Node] = []
    links: list[Link] = []
    told = dict(phase.told)
    for symbol in phase.symbols:
        if symbol.steps[0].number == start:
            nodes.append(Node(_(BEGIN), mm(12.5), mm(6.0)))
            links.append(Link(_(BEGIN), symbol.name))
        nodes.append(_node(setter, symbol))
        if symbol.name in told:
            lines = _numbers(told[symbol.name])
            wide = mm(DIGIT) * max(len(each) for each in lines) + mm(1.5)
            nodes.append(Node(symbol.name + ASIDE, wide, mm(LINE * len(lines) + 0.8)))
            links.append(Link(symbol.name, symbol.name + ASIDE))
    links += [Link(*each) for each in phase.links]
    graph = Graph(tuple(nodes), tuple(links), is_across, mm(1.8), mm(4.0))
    return spaced_coordinates(graph, mm(0.7))


def _node(setter: Setter, symbol: Symbol) -> Node:
    if is_decision(symbol.steps[0]):
        return Node(symbol.name, setter.mm(9.6), setter.mm(9.6), True)
    if len(symbol.steps) == 1:
        return Node(symbol.name, setter.mm(10.0), setter.mm(6.0))
    words = _line(setter, symbol.name, _style(setter)).width
    return Node(symbol.name, max(setter.mm(18.0), words + setter.mm(2.4)), setter.mm(6.0))


def _outline(symbol: Symbol) -> Outline:
    step = symbol.steps[0]
    return Outline.DECISION if is_decision(step) else OUTLINES[step.kind]


def _style(setter: Setter) -> Style:
    return setter.style(9.2, Weight.MEDIUM)


def _line(setter: Setter, words: str, style: Style) -> Text:
    """Words on one line, from nought."""
    nowhere = Shape(Outline.PANEL, 0.0, 0.0, 0.0, 0.0)
    _shape, text = setter.centred(words, style, nowhere, Role.NOTE, "map", Tier.REFER)
    assert isinstance(text, Text)
    return replace(text, x=0.0, y=0.0)


def _numbers(numbers: Sequence[int]) -> list[str]:
    """A few numbers a line."""
    lines = [numbers[place : place + IN_LINE] for place in range(0, len(numbers), IN_LINE)]
    told = [",\u00a0".join(str(each) for each in line) for line in lines]
    return [*(f"{each}," for each in told[:-1]), told[-1]]


def _aside(setter: Setter, numbers: Sequence[int], width: float, height: float) -> Text:
    pad, runs = setter.mm(0.9), (Run("\n".join(_numbers(numbers))),)
    return Text(
        pad,
        setter.mm(0.4),
        width - pad,
        height - setter.mm(0.8),
        runs,
        setter.style(9.2),
        Role.NUMBER,
        Tier.REFER,
        "map",
    )


def _rows(drawings: Sequence[Drawing], width: float, lane: float) -> Iterator[list[Drawing]]:
    row: list[Drawing] = []
    for drawing in drawings:
        if row and sum(each.width + lane for each in row) + drawing.width > width:
            yield row
            row = []
        row.append(drawing)
    if row:
        yield row


def _shelf(setter: Setter, row: Sequence[Drawing]) -> Shelf:
    items: list[Item] = []
    x = 0.0
    for drawing in row:
        items += drawing.piece.at(x, 0.0)
        x += drawing.width + setter.mm(LANE)
    height = max(each.piece.height for each in row)
    return Shelf(Piece(height, tuple(items)), sum(each.symbols for each in row))
