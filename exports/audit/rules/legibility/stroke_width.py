"""Strokes of letters, arrows and borders are wide enough for their distance."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import Mark, Measure, Rule, Where, at_least
from chamberwise.exports.audit.subject import Side, Subject
from chamberwise.exports.legibility.angle import MM_PER_POINT
from chamberwise.exports.paper.sheet import Arrow, Role, Shape, Tier, Weight

PER_DISTANCE = 1.45e-5 * 40
"""Stroke width over distance for an acuity of 6/12."""
STEMS = {Weight.REGULAR: 0.083, Weight.MEDIUM: 0.115, Weight.BOLD: 0.148}
"""Upright strokes of the typeface in em, at its narrowest cut; measured on the font file."""


def least_stroke(distance: float) -> float:
    """Return the least stroke in millimetres at a distance in millimetres.

    >>> round(least_stroke(3000), 2)
    1.74
    """
    return PER_DISTANCE * distance


def _measure(subject: Subject) -> Iterator[Measure]:
    for side, block in subject.to_act_on():
        if block.role is not Role.MARK:
            thinnest = min(
                STEMS[run.weight if run.weight is not Weight.REGULAR else block.text.style.weight]
                for run in block.text.runs
            )
            stem = thinnest * block.size * MM_PER_POINT
            yield _share(stem, side.distance(block.tier), block.where)
    for side in subject.sides:
        yield from _lines(side)


def _lines(side: Side) -> Iterator[Measure]:
    distance = side.distance(Tier.ACT)
    for item in side.flow.nodes:
        if item.weight:
            yield _share(item.weight, distance, _at(side, item))
    for arrow in side.flow.arrows:
        yield _share(arrow.weight, distance, _at(side, arrow))


def _at(side: Side, item: Shape | Arrow) -> Where:
    x, y = (item.x, item.y) if isinstance(item, Shape) else item.points[0]
    return Where(side.number, x, y, item.of)


def _share(width: float, distance: float, where: Where) -> Measure:
    least = least_stroke(distance)
    return Measure(
        width / least,
        where,
        _("{width} mm where {least} mm are needed").format(
            width=decimal(f"{width:.2f}"), least=decimal(f"{least:.2f}")
        ),
    )


RULE = Rule(
    id="LEG-09",
    title=N_("Strokes are wide enough for their distance"),
    limit=at_least(N_("of the stroke needed"), warning=1),
    source="Howett 1983, stroke width model, for 6/12",
    mark=Mark.VERIFIED,
    measure=_measure,
)
