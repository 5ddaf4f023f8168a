"""Room round every box, so that no arrow runs along the border of a box that is not its own."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.exports.layout.content import Graph, Layout, Node, Placed, Point, Route
from chamberwise.exports.layout.coordinates import coordinates

HALVINGS = 18
"""A line is cut in half so often to find where it meets a border: to less than a micrometre."""


def spaced_coordinates(graph: Graph, margin: float) -> Layout:
    """Return coordinates of boxes with a margin about each, and arrows that end at the boxes."""
    grown = tuple(_larger(node, margin) for node in graph.nodes)
    gap, rise = max(0.1, graph.gap - 2 * margin), max(0.1, graph.rise - 2 * margin)
    found = coordinates(replace(graph, nodes=grown, gap=gap, rise=rise))
    placed = tuple(_smaller(each, margin) for each in found.placed)
    where = {each.node.name: each for each in placed}
    routes = tuple(_joined(each, where) for each in found.routes)
    return replace(found, placed=placed, routes=routes)


def _larger(node: Node, by: float) -> Node:
    return node._replace(width=node.width + 2 * by, height=node.height + 2 * by)


def _smaller(place: Placed, by: float) -> Placed:
    return Placed(_larger(place.node, -by), place.x + by, place.y + by)


def _joined(route: Route, where: dict[str, Placed]) -> Route:
    """Lead both ends of an arrow on to the borders of the boxes themselves."""
    if len(route.points) < 2:
        return route
    first = _border(route.points[0], where[route.link.start])
    last = _border(route.points[-1], where[route.link.end])
    return Route(route.link, (first, *route.points[1:-1], last))


def _border(point: Point, place: Placed) -> Point:
    """Return where the way from a point to the middle of a box meets its outline."""
    (x, y), (middle_x, middle_y) = point, _middle(place)
    out, inside = 0.0, 1.0
    for _ in range(HALVINGS):
        half = (out + inside) / 2
        at = (x + (middle_x - x) * half, y + (middle_y - y) * half)
        out, inside = (out, half) if _holds(place, at) else (half, inside)
    return (x + (middle_x - x) * inside, y + (middle_y - y) * inside)


def _middle(place: Placed) -> Point:
    return (place.x + place.node.width / 2, place.y + place.node.height / 2)


def _holds(place: Placed, point: Point) -> bool:
    middle_x, middle_y = _middle(place)
    across = abs(point[0] - middle_x) / (place.node.width / 2)
    down = abs(point[1] - middle_y) / (place.node.height / 2)
    return across + down <= 1 if place.node.is_diamond else max(across, down) <= 1
