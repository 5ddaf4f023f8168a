"""Points, segments, rectangles and convex outlines, in millimetres from top left.

Crossings are decided in whole micrometres and fractions, never in floating point.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import acos, degrees, hypot
from typing import NamedTuple, TypeAlias

Point: TypeAlias = tuple[float, float]
Exact: TypeAlias = tuple[Fraction, Fraction]
Whole: TypeAlias = tuple[int, int]
MICROMETRES = 1000


class Box(NamedTuple):
    """An upright rectangle."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """From left to right."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From top to bottom."""
        return self.bottom - self.top

    @property
    def centre(self) -> Point:
        """Its middle."""
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2

    @property
    def area(self) -> float:
        """In square millimetres."""
        return max(0.0, self.width) * max(0.0, self.height)

    def grown(self, by: float) -> Box:
        """Return it with every edge moved outwards."""
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def holds(self, point: Point) -> bool:
        """Return whether a point is in it, edges included."""
        return self.left <= point[0] <= self.right and self.top <= point[1] <= self.bottom

    def contains(self, other: Box, slack: float = 0.0) -> bool:
        """Return whether another lies wholly in it."""
        return (
            other.left >= self.left - slack
            and other.top >= self.top - slack
            and other.right <= self.right + slack
            and other.bottom <= self.bottom + slack
        )

    def overlaps(self, other: Box, slack: float = 0.0) -> bool:
        """Return whether they share more than `slack` in both directions."""
        return (
            min(self.right, other.right) - max(self.left, other.left) > slack
            and min(self.bottom, other.bottom) - max(self.top, other.top) > slack
        )

    def distance_to(self, point: Point) -> float:
        """Return how far a point is from its nearest part; 0 inside."""
        x = max(self.left - point[0], 0.0, point[0] - self.right)
        y = max(self.top - point[1], 0.0, point[1] - self.bottom)
        return hypot(x, y)

    @property
    def corners(self) -> tuple[Point, Point, Point, Point]:
        """Clockwise from top left, on paper."""
        return (
            (self.left, self.top),
            (self.right, self.top),
            (self.right, self.bottom),
            (self.left, self.bottom),
        )


def around(boxes: Sequence[Box]) -> Box:
    """Return the least box that holds them all."""
    return Box(
        min(each.left for each in boxes),
        min(each.top for each in boxes),
        max(each.right for each in boxes),
        max(each.bottom for each in boxes),
    )


def round_points(points: Sequence[Point]) -> Box:
    """Return the least box that holds some points."""
    across, down = zip(*points, strict=True)
    return Box(min(across), min(down), max(across), max(down))


def segments(points: Sequence[Point]) -> Iterator[tuple[Point, Point]]:
    """Yield the straight parts of a line along points, empty ones left out."""
    for start, end in itertools.pairwise(points):
        if start != end:
            yield start, end


def bends(points: Sequence[Point]) -> int:
    """Return how often a line changes its direction.

    >>> bends([(0, 0), (5, 0), (9, 0), (9, 4)])
    1
    """
    whole = [_whole(each) for each in points]
    parts = [(a, b) for a, b in itertools.pairwise(whole) if a != b]
    return sum(
        _cross(a, b, d) != 0 or _dot(a, b, c, d) < 0 for (a, b), (c, d) in itertools.pairwise(parts)
    )


def crossings(first: Sequence[Point], second: Sequence[Point]) -> dict[Exact, float]:
    """Return where two lines cross, and the smaller angle there in degrees.

    A point at which either line ends is no crossing, nor is a stretch along which both run.
    """
    ends = {_exact(line[place]) for line in (first, second) for place in (0, -1)}
    found: dict[Exact, float] = {}
    for a, b in segments(first):
        for c, d in segments(second):
            point = meeting(a, b, c, d)
            if point is not None and point not in ends:
                found[point] = max(found.get(point, 0.0), angle_between(a, b, c, d))
    return found


def meeting(a: Point, b: Point, c: Point, d: Point) -> Exact | None:
    """Return the one point that two segments share; `None` for none, or for a whole stretch."""
    p, q, r, s = _whole(a), _whole(b), _whole(c), _whole(d)
    across = (q[0] - p[0]) * (s[1] - r[1]) - (q[1] - p[1]) * (s[0] - r[0])
    if across == 0:
        return None
    along = Fraction((r[0] - p[0]) * (s[1] - r[1]) - (r[1] - p[1]) * (s[0] - r[0]), across)
    other = Fraction((r[0] - p[0]) * (q[1] - p[1]) - (r[1] - p[1]) * (q[0] - p[0]), across)
    if not (0 <= along <= 1 and 0 <= other <= 1):
        return None
    return p[0] + along * (q[0] - p[0]), p[1] + along * (q[1] - p[1])


def shared_length(a: Point, b: Point, c: Point, d: Point) -> float:
    """Return over how many millimetres two segments lie on one another."""
    p, q, r, s = _whole(a), _whole(b), _whole(c), _whole(d)
    if p == q or _cross(p, q, r) != 0 or _cross(p, q, s) != 0:
        return 0.0
    axis = 0 if abs(q[0] - p[0]) >= abs(q[1] - p[1]) else 1
    low = max(min(p[axis], q[axis]), min(r[axis], s[axis]))
    high = min(max(p[axis], q[axis]), max(r[axis], s[axis]))
    if high <= low:
        return 0.0
    slope = hypot(q[0] - p[0], q[1] - p[1]) / abs(q[axis] - p[axis])
    return (high - low) * slope / MICROMETRES


def angle_between(a: Point, b: Point, c: Point, d: Point) -> float:
    """Return the smaller angle between two lines, in degrees."""
    x, y = b[0] - a[0], b[1] - a[1]
    u, v = d[0] - c[0], d[1] - c[1]
    cosine = abs(x * u + y * v) / (hypot(x, y) * hypot(u, v))
    return degrees(acos(min(1.0, cosine)))


def clearance(outline: Sequence[Point], point: Point) -> float:
    """Return how far inside a convex outline a point is; negative outside.

    The outline runs clockwise on paper.
    """
    return min(_side(a, b, point) for a, b in _edges(outline))


def runs_through(start: Point, end: Point, outline: Sequence[Point], depth: float = 0.0) -> bool:
    """Return whether a segment goes deeper than `depth` into a convex outline."""
    low, high = 0.0, 1.0
    for a, b in _edges(outline):
        first, last = _side(a, b, start) - depth, _side(a, b, end) - depth
        if first <= 0 and last <= 0:
            return False
        if first < 0:
            low = max(low, first / (first - last))
        elif last < 0:
            high = min(high, first / (first - last))
    return low < high


def _edges(outline: Sequence[Point]) -> Iterator[tuple[Point, Point]]:
    for place, point in enumerate(outline):
        following = outline[(place + 1) % len(outline)]
        if following != point:
            yield point, following


def _side(a: Point, b: Point, point: Point) -> float:
    x, y = b[0] - a[0], b[1] - a[1]
    return (x * (point[1] - a[1]) - y * (point[0] - a[0])) / hypot(x, y)


def _whole(point: Point) -> Whole:
    return round(point[0] * MICROMETRES), round(point[1] * MICROMETRES)


def _exact(point: Point) -> Exact:
    x, y = _whole(point)
    return Fraction(x), Fraction(y)


def _cross(a: Whole, b: Whole, c: Whole) -> int:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _dot(a: Whole, b: Whole, c: Whole, d: Whole) -> int:
    return (b[0] - a[0]) * (d[0] - c[0]) + (b[1] - a[1]) * (d[1] - c[1])
