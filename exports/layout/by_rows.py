"""Plain rows, one a generation: always there, without any layout program."""

from __future__ import annotations

from itertools import pairwise
from typing import NamedTuple

import networkx as nx
from chamberwise.exports.layout.content import Graph, Layout, Link, Node, Placed, Point, Route

MADE_BY = "plain rows"


class _Lane(NamedTuple):
    """A place to pass through between two ranks, as wide as an arrow."""

    link: int
    rank: int


def lay_out(graph: Graph) -> Layout:
    """Return a layout; arrows go between the boxes of the ranks they pass."""
    if graph.is_across:
        return _turned(lay_out(_upright(graph)))
    ranks = _ranks(graph)
    rows = _rows(graph, ranks)
    x = _across(graph, rows)
    heights = [
        max((each.height for each in row if isinstance(each, Node)), default=0) for row in rows
    ]
    tops = [sum(heights[:rank]) + rank * graph.rise for rank in range(len(rows))]
    where = {each.name: Placed(each, x[each], tops[ranks[each.name]]) for each in graph.nodes}
    width = max((place.x + place.node.width for place in where.values()), default=0.0)
    lanes = [x[each] for row in rows for each in row if isinstance(each, _Lane)]
    routes = tuple(
        Route(link, _route(place, link, where, ranks, x, tops, heights, graph.rise))
        for place, link in enumerate(graph.links)
    )
    height = tops[-1] + heights[-1] if rows else 0.0
    return Layout(max([width, *lanes]), height, tuple(where.values()), routes, MADE_BY)


def _ranks(graph: Graph) -> dict[str, int]:
    """Arrows that would close a ring, met in reading order, are drawn but do not count."""
    order = {node.name: place for place, node in enumerate(graph.nodes)}
    forward: nx.DiGraph[str] = nx.DiGraph()
    forward.add_nodes_from(order)
    forward.add_edges_from(link for link in graph.links if order[link.start] < order[link.end])
    return {
        name: rank
        for rank, names in enumerate(nx.topological_generations(forward))
        for name in names
    }


def _rows(graph: Graph, ranks: dict[str, int]) -> list[list[Node | _Lane]]:
    rows: list[list[Node | _Lane]] = [[] for _ in range(max(ranks.values(), default=-1) + 1)]
    for node in graph.nodes:
        rows[ranks[node.name]].append(node)
    for place, link in enumerate(graph.links):
        low, high = sorted((ranks[link.start], ranks[link.end]))
        for rank in range(low + 1, high):
            rows[rank].append(_Lane(place, rank))
    return rows


def _across(graph: Graph, rows: list[list[Node | _Lane]]) -> dict[Node | _Lane, float]:
    x: dict[Node | _Lane, float] = {}
    for row in rows:
        at = 0.0
        for each in row:
            x[each] = at
            at += (each.width if isinstance(each, Node) else 0.0) + graph.gap
    return x


def _route(
    place: int,
    link: Link,
    where: dict[str, Placed],
    ranks: dict[str, int],
    x: dict[Node | _Lane, float],
    tops: list[float],
    heights: list[float],
    graph_rise: float,
) -> tuple[Point, ...]:
    start, end = where[link.start], where[link.end]
    down = ranks[link.start] < ranks[link.end]
    first, last = (_foot(start), _head(end)) if down else (_head(start), _foot(end))
    if ranks[link.start] == ranks[link.end]:
        return _beside(_head(start), _head(end), graph_rise / 3)
    step = 1 if down else -1
    points = [first]
    for rank in range(ranks[link.start] + step, ranks[link.end], step):
        lane = x[_Lane(place, rank)]
        ends = (tops[rank], tops[rank] + heights[rank])
        points += [(lane, each) for each in (ends if down else ends[::-1])]
    points.append(last)
    return tuple(a for a, b in pairwise([*points, (-1.0, -1.0)]) if a != b)


def _beside(start: Point, end: Point, over: float) -> tuple[Point, ...]:
    """Over the heads of a row; also from a box to itself."""
    (from_x, y), (to_x, _) = start, end
    left, right = from_x - over, to_x + over
    return ((left, y), (left, y - over), (right, y - over), (right, y))


def _head(place: Placed) -> Point:
    return (place.x + place.node.width / 2, place.y)


def _foot(place: Placed) -> Point:
    return (place.x + place.node.width / 2, place.y + place.node.height)


def _upright(graph: Graph) -> Graph:
    nodes = tuple(each._replace(width=each.height, height=each.width) for each in graph.nodes)
    return Graph(nodes, graph.links, gap=graph.gap, rise=graph.rise)


def _turned(layout: Layout) -> Layout:
    placed = tuple(
        Placed(node._replace(width=node.height, height=node.width), y, x)
        for node, x, y in layout.placed
    )
    routes = tuple(Route(link, tuple((y, x) for x, y in points)) for link, points in layout.routes)
    return Layout(layout.height, layout.width, placed, routes, MADE_BY)
