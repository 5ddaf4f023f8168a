"""Coordinates out of Graphviz's JSON: points from below left, turned to millimetres from above."""

from __future__ import annotations

import json
from typing import Any

from chamberwise.exports.layout.content import Graph, Layout, NoLayoutError, Placed, Point, Route

MM = 25.4 / 72
PLACES = 3


def layout_from_json(text: bytes | str, graph: Graph, made_by: str) -> Layout:
    """Return the layout that `json0` output tells, or raise `NoLayoutError`."""
    try:
        data = json.loads(text)
        _, _, width, height = (float(each) for each in data["bb"].split(","))
        placed = tuple(
            _placed(node, each, height)
            for node, each in zip(graph.nodes, _numbered(data.get("objects", ())), strict=True)
        )
        edges = {each["id"]: each for each in data.get("edges", ())}
        routes = tuple(
            Route(link, _points(edges[f"e{place}"]["pos"], height))
            for place, link in enumerate(graph.links)
        )
    except (KeyError, ValueError, TypeError) as error:
        raise NoLayoutError(f"{made_by} told no coordinates: {error}") from error
    return Layout(_mm(width), _mm(height), placed, routes, made_by)


def _numbered(objects: Any) -> list[Any]:
    return sorted(objects, key=lambda each: int(each["name"][1:]))


def _placed(node: Any, told: Any, height: float) -> Placed:
    x, y = (float(each) for each in told["pos"].split(","))
    return Placed(
        node,
        round(x * MM - node.width / 2, PLACES),
        round((height - y) * MM - node.height / 2, PLACES),
    )


def _points(pos: str, height: float) -> tuple[Point, ...]:
    """A polyline comes as a Bezier curve whose every third point lies on the line."""
    told = [part.split(",") for part in pos.split() if part[0] not in "es"]
    corners = [(_mm(float(x)), _mm(height - float(y))) for x, y in told][::3]
    return tuple(dict.fromkeys(corners))


def _mm(points: float) -> float:
    return round(points * MM, PLACES)
