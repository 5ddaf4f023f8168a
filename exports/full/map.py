"""The map: every step as a small numbered symbol or, of a long pathway, every phase as a box."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import groupby

from chamberwise.exports.full.block import OUTLINES, is_decision
from chamberwise.exports.full.content import FullPathway, Step
from chamberwise.exports.full.piece import Piece, Setter
from chamberwise.exports.layout.content import Graph, Layout, Link, Node
from chamberwise.exports.layout.coordinates import coordinates
from chamberwise.exports.paper.sheet import Arrow, Item, Outline, Role, Run, Shape, Weight

MOST = 60
"""Steps; a longer pathway is shown by its phases."""
TITLE = "Map"
BEGIN = "Start"


def map_piece(
    setter: Setter, content: FullPathway, width: float, left: float, height: float
) -> Piece | None:
    """Return the map for the room left on the page or, failing that, for a page of its own.

    `None` when it fits neither; type is never made smaller for it.
    """
    heading = setter.text(TITLE, setter.style(15, Weight.BOLD), width, Role.HEADING, "map")
    over = heading.height + setter.mm(3.0)
    makers = [_by_phases] if len(content.steps) > MOST else [_by_steps, _by_phases]
    for maker in makers:
        drawn = [maker(setter, content, is_across) for is_across in (False, True)]
        narrow = [each for each in drawn if _width(each) <= width]
        for room in (left, height):
            if fitting := [each for each in narrow if each.height + over <= room]:
                return _under(heading, min(fitting, key=lambda each: each.height), over)
    return None


def _under(heading: Piece, piece: Piece, over: float) -> Piece:
    return Piece(over + piece.height, (*heading.items, *piece.at(0.0, over)))


def _width(piece: Piece) -> float:
    shapes = (each for each in piece.items if isinstance(each, Shape))
    points = (x for each in piece.items if isinstance(each, Arrow) for x, _ in each.points)
    return max([0.0, *(each.x + each.width for each in shapes), *points])


def _by_steps(setter: Setter, content: FullPathway, is_across: bool) -> Piece:
    mm = setter.mm
    nodes = [Node(BEGIN, mm(12.5), mm(6.0)), *(_node(setter, step) for step in content.steps)]
    links = [Link(BEGIN, str(content.start))]
    links += [Link(str(step.number), str(way.to)) for step in content.steps for way in step.ways]
    layout = _laid(nodes, links, is_across, mm(2.4), mm(3.2))
    style = setter.style(9.2, Weight.MEDIUM)
    outlines = {str(step.number): _outline(step) for step in content.steps}
    items = list(_arrows(layout))
    for (name, wide, high), x, y in layout.placed:
        outline = outlines.get(name, Outline.TERMINATOR)
        shape = Shape(outline, x, y, wide, high, weight=0.3)
        items += setter.centred(name, style, shape, Role.NUMBER, "map")
    return Piece(layout.height, tuple(items))


def _node(setter: Setter, step: Step) -> Node:
    wide, high = (8.6, 8.6) if is_decision(step) else (10.0, 6.0)
    return Node(str(step.number), setter.mm(wide), setter.mm(high))


def _outline(step: Step) -> Outline:
    return Outline.DECISION if is_decision(step) else OUTLINES[step.kind]


def _by_phases(setter: Setter, content: FullPathway, is_across: bool) -> Piece:
    mm = setter.mm
    wide, pad = mm(44.0), mm(2.2)
    phases = list(dict.fromkeys(step.phase for step in content.steps))
    texts = {
        phase: setter.text(
            (Run(phase, Weight.BOLD), Run(f"\n{numbers(content.steps, phase)}")),
            setter.style(9.2),
            wide - 2 * pad,
            Role.NOTE,
            "map",
        )
        for phase in phases
    }
    of = {step.number: step.phase for step in content.steps}
    links = dict.fromkeys(
        Link(step.phase, of[way.to])
        for step in content.steps
        for way in step.ways
        if of[way.to] != step.phase
    )
    nodes = [Node(each, wide, texts[each].height + 2 * pad) for each in phases]
    layout = _laid(nodes, links, is_across, mm(6.0), mm(5.2))
    items = list(_arrows(layout))
    for (name, _, high), x, y in layout.placed:
        items.append(Shape(Outline.PROCESS, x, y, wide, high))
        items += texts[name].at(x + pad, y + pad)
    return Piece(layout.height, tuple(items))


def numbers(steps: Iterable[Step], phase: str) -> str:
    """Return which steps belong to a phase, runs shortened."""
    told = []
    for is_in, group in groupby(steps, lambda step: step.phase == phase):
        if is_in:
            run = [step.number for step in group]
            told.append(f"{run[0]}" if len(run) == 1 else f"{run[0]} to {run[-1]}")
    word = "Step" if len(told) == 1 and told[0].isdigit() else "Steps"
    return f"{word} {', '.join(told)}"


def _laid(
    nodes: Iterable[Node], links: Iterable[Link], is_across: bool, gap: float, rise: float
) -> Layout:
    return coordinates(Graph(tuple(nodes), tuple(dict.fromkeys(links)), is_across, gap, rise))


def _arrows(layout: Layout) -> Iterable[Item]:
    for _, points in layout.routes:
        if len(points) > 1:
            yield Arrow(points, 0.3, of="map")
