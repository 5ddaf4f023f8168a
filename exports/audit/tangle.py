"""Where the arrows of a page cross or lie on one another."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import NamedTuple

from chamberwise.exports.audit.flow import Flow, Link
from chamberwise.exports.audit.geometry import (
    MICROMETRES,
    Point,
    crossings,
    round_points,
    segments,
    shared_length,
)

ALONG = 0.5
"""Arrows that share more than so many millimetres lie on one another."""


class Crossing(NamedTuple):
    """A point where two arrows cross, and the smaller angle there in degrees."""

    point: Point
    angle: float


def tangled(flow: Flow) -> Iterator[Crossing]:
    """Yield every crossing of two arrows."""
    for one, other in _near(flow):
        for (x, y), angle in crossings(one.arrow.points, other.arrow.points).items():
            yield Crossing((float(x) / MICROMETRES, float(y) / MICROMETRES), angle)


def most_crossings(flow: Flow) -> int:
    """Return how many crossings the chart could have at most, for boxes and arrows as they are."""
    edges = len(flow.links)
    return edges * (edges - 1) // 2 - sum(each * (each - 1) for each in flow.degrees) // 2


def on_one_another(flow: Flow) -> Iterator[tuple[Point, float]]:
    """Yield where arrows that neither part nor meet run on one line, and over what length."""
    for one, other in _near(flow):
        if not _is_joined(one, other):
            shared = max(
                (
                    shared_length(*first, *second)
                    for first in segments(one.arrow.points)
                    for second in segments(other.arrow.points)
                ),
                default=0.0,
            )
            if shared > ALONG:
                yield one.arrow.points[0], shared


def _is_joined(one: Link, other: Link) -> bool:
    same_source = one.source is not None and one.source == other.source
    same_target = one.target is not None and one.target == other.target
    ends = {one.arrow.points[0], one.arrow.points[-1]}
    return same_source or same_target or other.arrow.points[-1] in ends


def _near(flow: Flow) -> Iterator[tuple[Link, Link]]:
    boxes = [round_points(link.arrow.points) for link in flow.links]
    for one, other in combinations(range(len(boxes)), 2):
        if boxes[one].grown(0.01).overlaps(boxes[other].grown(0.01)):
            yield flow.links[one], flow.links[other]
