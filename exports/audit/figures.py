"""Lines and symbols as figures: those that a placed page asks for, and those that a file paints."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import hypot
from typing import NamedTuple

from chamberwise.exports.audit.geometry import Box, Point, round_points
from chamberwise.exports.audit.printed.content import Leaf, Path
from chamberwise.exports.paper.sheet import Arrow, Code, Outline, Page, Shape

NEAR = 0.1
"""Millimetres by which a point may miss its place."""
LINE, HEAD, EDGE = "line", "arrow head", "round edge"
BOX, DIAMOND, ROUND = "box", "diamond", "round symbol"
NECK, LONG, WIDE = 4, 5, 2.4
"""Weights of its line: how much a head takes off the line, how long it is, how wide to a side."""


class Figure(NamedTuple):
    """One thing painted: a line by its points, all else by the corners of its box."""

    kind: str
    points: tuple[Point, ...]
    ink: str
    is_dashed: bool = False

    def is_same(self, other: Figure) -> bool:
        """Return whether another is the same, but for what cannot be seen."""
        return self._told() == other._told() and all(
            abs(x - other_x) <= NEAR and abs(y - other_y) <= NEAR
            for (x, y), (other_x, other_y) in zip(self.points, other.points, strict=True)
        )

    def _told(self) -> tuple[str, str, bool, int]:
        return self.kind, self.ink, self.is_dashed, len(self.points)


class Differences(NamedTuple):
    """What was placed and is not painted, and what is painted and was not placed."""

    missing: tuple[Figure, ...]
    strange: tuple[Figure, ...]


def differences(page: Page, leaf: Leaf) -> Differences:
    """Return where a page of a file differs from the page as it was placed."""
    codes = [_square(each).grown(NEAR) for each in page.items if isinstance(each, Code)]
    found: dict[tuple[int, int], list[Figure]] = {}
    for path in leaf.paths:
        if not any(code.contains(round_points(path.points)) for code in codes):
            figure = _painted(path)
            found.setdefault(_cell(figure.points[0]), []).append(figure)
    missing = [figure for figure in _placed(page) if not _taken(found, figure)]
    return Differences(tuple(missing), tuple(each for left in found.values() for each in left))


def _taken(found: dict[tuple[int, int], list[Figure]], wanted: Figure) -> bool:
    """Take the same figure out of those found; false where there is none."""
    across, down = _cell(wanted.points[0])
    for cell in ((across + x, down + y) for x in (0, -1, 1) for y in (0, -1, 1)):
        for figure in found.get(cell, ()):
            if wanted.is_same(figure):
                found[cell].remove(figure)
                return True
    return False


def _cell(point: Point) -> tuple[int, int]:
    return round(point[0]), round(point[1])


def _square(code: Code) -> Box:
    return Box(code.x, code.y, code.x + code.side, code.y + code.side)


def _placed(page: Page) -> Iterator[Figure]:
    for item in page.items:
        if isinstance(item, Arrow):
            yield from _of_arrow(item)
        elif isinstance(item, Shape):
            yield from _of_shape(item)


def _of_arrow(arrow: Arrow) -> Iterator[Figure]:
    points = arrow.points
    if arrow.has_head and len(points) > 1:
        (x, y), (tip_x, tip_y) = points[-2:]
        length = hypot(tip_x - x, tip_y - y) or 1.0
        along = (tip_x - x) / length, (tip_y - y) / length
        neck = min(arrow.weight * NECK, length)
        points = (*points[:-1], (tip_x - along[0] * neck, tip_y - along[1] * neck))
        yield Figure(HEAD, _head((tip_x, tip_y), along, arrow.weight), arrow.ink.value)
    yield Figure(LINE, points, arrow.ink.value, arrow.is_dashed)


def _head(tip: Point, along: Point, weight: float) -> tuple[Point, ...]:
    """Return the corners of an arrow head, its tip first."""
    (x, y), (across, down) = tip, along
    back_x, back_y = x - across * weight * LONG, y - down * weight * LONG
    return tip, *(
        (back_x - side * down * weight * WIDE, back_y + side * across * weight * WIDE)
        for side in (1, -1)
    )


def _of_shape(shape: Shape) -> Iterator[Figure]:
    left, right = shape.x, shape.x + shape.width
    top, bottom = shape.y, shape.y + shape.height
    kind = {
        Outline.DECISION: DIAMOND,
        Outline.TERMINATOR: ROUND,
        Outline.CONNECTOR: ROUND,
    }.get(shape.outline, BOX)
    yield Figure(kind, ((left, top), (right, bottom)), shape.ground.value)
    if shape.outline is Outline.TERMINATOR:  # round corners are painted apart from the ground
        yield Figure(EDGE, ((left, top), (right, bottom)), shape.border.value)
    if shape.outline is Outline.PREDEFINED_PROCESS:
        bar = max(1.6, shape.weight * 3.2)
        for x in (left + bar, right - bar):
            yield Figure(LINE, ((x, top), (x, bottom)), shape.border.value)


def _painted(path: Path) -> Figure:
    """Return what a path is: an open line, or a closed figure by the number of its corners."""
    box = round_points(path.points)
    corners = (box.left, box.top), (box.right, box.bottom)
    if path.fill is None and path.points[0] == path.points[-1]:
        return Figure(EDGE, corners, path.stroke or "")
    if path.fill is None:
        return Figure(LINE, path.points, path.stroke or "", path.is_dashed)
    distinct = len(set(_to_hundredths(path.points)))
    if distinct == 3:
        return Figure(HEAD, path.points[:3], path.fill)
    if distinct > 4:
        return Figure(ROUND, corners, path.fill)
    middle = (box.left + box.right) / 2
    is_diamond = any(abs(x - middle) <= NEAR for x, _ in path.points)
    return Figure(DIAMOND if is_diamond else BOX, corners, path.fill)


def _to_hundredths(points: Iterable[Point]) -> Iterator[Point]:
    return ((round(x, 2), round(y, 2)) for x, y in points)
