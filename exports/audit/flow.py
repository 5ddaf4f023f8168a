"""The chart as a graph, told by what touches what on paper."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import TypeGuard

from chamberwise.exports.audit.geometry import Box, Point
from chamberwise.exports.paper.sheet import Arrow, Item, Outline, Page, Shape

REACH = 1.0
"""An arrow's end this near to a box belongs to it, in millimetres."""
BAR = 1.6
"""How far in the side bars of a predefined process stand."""


@dataclass(frozen=True, slots=True)
class Link:
    """An arrow and the boxes it joins, so far as it touches any."""

    arrow: Arrow
    source: int | None
    target: int | None


@dataclass(frozen=True)
class Flow:
    """The boxes and arrows of a page; links name boxes by their place in `nodes`."""

    nodes: tuple[Shape, ...]
    arrows: tuple[Arrow, ...]

    @cached_property
    def links(self) -> tuple[Link, ...]:
        """Every arrow with its ends."""
        return tuple(
            Link(arrow, self._at(arrow.points[0]), self._at(arrow.points[-1]))
            for arrow in self.arrows
        )

    @cached_property
    def degrees(self) -> list[int]:
        """How many arrows end or begin at each box."""
        found = [0] * len(self.nodes)
        for link in self.links:
            for end in (link.source, link.target):
                if end is not None:
                    found[end] += 1
        return found

    def leaving(self, node: int) -> Iterator[Link]:
        """Yield the arrows that begin at a box."""
        return (link for link in self.links if link.source == node)

    def _at(self, point: Point) -> int | None:
        near = [
            (box_of(node).distance_to(point), box_of(node).area, place)
            for place, node in enumerate(self.nodes)
            if box_of(node).distance_to(point) <= REACH
        ]
        return min(near)[2] if near else None


def flow_of(page: Page) -> Flow:
    """Return the chart of a page: outlines that stand for steps, and arrows of the flow."""
    nodes = tuple(
        each for each in page.items if isinstance(each, Shape) and each.outline is not Outline.PANEL
    )
    return Flow(nodes, tuple(each for each in page.items if is_flow(each)))


def is_flow(item: Item) -> TypeGuard[Arrow]:
    """Return whether an item is an arrow that leads somewhere, not a plain rule."""
    return isinstance(item, Arrow) and (item.has_head or bool(item.of)) and len(item.points) > 1


def box_of(shape: Shape) -> Box:
    """Return the rectangle round a shape."""
    return Box(shape.x, shape.y, shape.x + shape.width, shape.y + shape.height)


def outline_of(shape: Shape) -> tuple[Point, ...]:
    """Return the convex outline that is drawn, clockwise; round ones by their rectangle."""
    box = box_of(shape)
    if shape.outline is not Outline.DECISION:
        return box.corners
    centre, middle = box.centre
    return (centre, box.top), (box.right, middle), (centre, box.bottom), (box.left, middle)


def inner_outline(shape: Shape) -> tuple[Point, ...]:
    """Return the outline of the room for words."""
    box = box_of(shape)
    if shape.outline is Outline.PREDEFINED_PROCESS:
        return Box(box.left + BAR, box.top, box.right - BAR, box.bottom).corners
    return outline_of(shape)
