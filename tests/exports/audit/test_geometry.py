"""Crossings and the rest against slow, plain definitions."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from chamberwise.exports.audit.geometry import (
    MICROMETRES,
    Box,
    Point,
    angle_between,
    bends,
    clearance,
    crossings,
    runs_through,
    shared_length,
)
from hypothesis import given
from hypothesis import strategies as st

SMALL = st.integers(0, 8)
POINTS = st.tuples(SMALL, SMALL).map(lambda each: (float(each[0]), float(each[1])))
LINES = st.lists(POINTS, min_size=2, max_size=5).filter(
    lambda line: all(a != b for a, b in pairwise(line))
)


def solved(a: Point, b: Point, c: Point, d: Point) -> tuple[Fraction, Fraction] | None:
    """Solve for the common point by Cramer's rule on the two lines' equations."""
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = ((Fraction(x), Fraction(y)) for x, y in (a, b, c, d))
    p, q, r = by - ay, ax - bx, (by - ay) * ax + (ax - bx) * ay
    s, t, u = dy - cy, cx - dx, (dy - cy) * cx + (cx - dx) * cy
    if p * t == q * s:
        return None
    x, y = (r * t - q * u) / (p * t - q * s), (p * u - r * s) / (p * t - q * s)
    within = all(
        min(one, two) <= at <= max(one, two)
        for one, two, at in ((ax, bx, x), (ay, by, y), (cx, dx, x), (cy, dy, y))
    )
    return (x, y) if within else None


@given(LINES, LINES)
def test_crossings_are_the_points_that_equations_give(one: list[Point], two: list[Point]) -> None:
    ends = {(Fraction(x), Fraction(y)) for line in (one, two) for x, y in (line[0], line[-1])}
    slow = {solved(*first, *second) for first in pairwise(one) for second in pairwise(two)}
    wanted = {each for each in slow if each and each not in ends}
    assert {(x / MICROMETRES, y / MICROMETRES) for x, y in crossings(one, two)} == wanted


@given(LINES, LINES)
def test_crossing_is_mutual(one: list[Point], two: list[Point]) -> None:
    assert set(crossings(one, two)) == set(crossings(two, one))


BOXES = st.tuples(SMALL, SMALL, st.integers(1, 5), st.integers(1, 5)).map(
    lambda each: Box(each[0], each[1], each[0] + each[2], each[1] + each[3])
)


@given(BOXES, BOXES)
def test_boxes_overlap_when_a_quarter_millimetre_lies_in_both(one: Box, other: Box) -> None:
    places = [n / 4 + 1 / 8 for n in range(60)]
    slow = any(one.holds((x, y)) and other.holds((x, y)) for x in places for y in places)
    assert one.overlaps(other) == slow


@given(POINTS, POINTS, BOXES)
def test_a_segment_runs_through_a_box_when_a_point_of_it_is_inside(
    start: Point, end: Point, box: Box
) -> None:
    steps = [n / 720 for n in range(721)]
    inside = any(
        box.left < start[0] + at * (end[0] - start[0]) < box.right
        and box.top < start[1] + at * (end[1] - start[1]) < box.bottom
        for at in steps
    )
    assert runs_through(start, end, box.corners) == inside


def test_a_vertex_on_another_line_crosses_it_once() -> None:
    bent = [(0.0, 5.0), (5.0, 5.0), (9.0, 9.0)]
    assert len(crossings(bent, [(5.0, 0.0), (5.0, 9.0)])) == 1


def test_arrows_that_meet_at_an_end_do_not_cross() -> None:
    assert crossings([(0.0, 0.0), (5.0, 5.0)], [(0.0, 9.0), (5.0, 5.0)]) == {}


@pytest.mark.parametrize(
    ("points", "count"),
    [
        ([(0, 0), (5, 0)], 0),
        ([(0, 0), (5, 0), (9, 0)], 0),
        ([(0, 0), (5, 0), (5, 5)], 1),
        ([(0, 0), (5, 0), (2, 0)], 1),
        ([(0, 0), (5, 0), (5, 5), (9, 5)], 2),
    ],
)
def test_bends_are_changes_of_direction(points: list[Point], count: int) -> None:
    assert bends(points) == count


def test_angles_lengths_and_room() -> None:
    assert angle_between((0, 0), (1, 0), (0, 0), (1, 1)) == pytest.approx(45)
    assert shared_length((0, 0), (9, 0), (5, 0), (20, 0)) == pytest.approx(4)
    assert shared_length((0, 0), (4, 4), (1, 1), (2, 2)) == pytest.approx(2**0.5)
    assert shared_length((0, 0), (9, 0), (0, 1), (9, 1)) == 0
    assert clearance(Box(0, 0, 10, 4).corners, (5, 1)) == 1
    assert clearance(Box(0, 0, 10, 4).corners, (5, 6)) == -2
