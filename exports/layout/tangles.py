"""Which arrows of a layout cross another arrow, or run through a box that is not theirs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise

from chamberwise.exports.layout.content import Layout, Link, Placed, Point, Route

DEPTH = 0.25
"""Millimetres an arrow may touch a box by."""


def tangled(layout: Layout) -> tuple[Link, ...]:
    """Return the arrows of the layout that are not free, each once."""
    found = [link for pair in _crossing(layout.routes) for link in pair]
    found += [route.link for route in layout.routes if _is_through(route, layout.placed)]
    return tuple(dict.fromkeys(found))


def _crossing(routes: tuple[Route, ...]) -> Iterator[tuple[Link, Link]]:
    spans = [_span(route.points) for route in routes]
    for (one, here), (other, there) in combinations(zip(routes, spans, strict=True), 2):
        if _meet(here, there) and any(
            _cross(*a, *b) for a in pairwise(one.points) for b in pairwise(other.points)
        ):
            yield one.link, other.link


def _span(points: Sequence[Point]) -> tuple[float, float, float, float]:
    across, down = zip(*points, strict=True)
    return min(across), min(down), max(across), max(down)


def _meet(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    return one[0] <= other[2] and other[0] <= one[2] and one[1] <= other[3] and other[1] <= one[3]


def _cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether two pieces share a point within both."""
    return _side(a, b, c) * _side(a, b, d) < 0 and _side(c, d, a) * _side(c, d, b) < 0


def _side(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _is_through(route: Route, placed: tuple[Placed, ...]) -> bool:
    others = [place for place in placed if place.node.name not in route.link]
    return any(
        _enters(start, end, place) for start, end in pairwise(route.points) for place in others
    )


def _enters(start: Point, end: Point, place: Placed) -> bool:
    """Cut the piece to the inside of the box, side by side (Liang and Barsky 1984)."""
    (x, y), (dx, dy) = start, (end[0] - start[0], end[1] - start[1])
    left, top = place.x + DEPTH, place.y + DEPTH
    right = place.x + place.node.width - DEPTH
    bottom = place.y + place.node.height - DEPTH
    low, high = 0.0, 1.0
    for step, room in ((-dx, x - left), (dx, right - x), (-dy, y - top), (dy, bottom - y)):
        if step == 0:
            if room <= 0:
                return False
        elif step < 0:
            low = max(low, room / step)
        else:
            high = min(high, room / step)
    return low < high
