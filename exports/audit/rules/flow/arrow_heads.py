"""Heads of arrows are large enough to be seen."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import Mark, Measure, Rule, Where, at_least
from chamberwise.exports.audit.subject import Side, Subject
from chamberwise.exports.paper.sheet import Arrow, Tier

NEAR = 0.4
CORNERS = 3
TIMES_WEIGHT = 3


def head_length(side: Side, arrow: Arrow) -> float:
    """Return how long the head is that was printed at an arrow's end, 0 if there is none."""
    x, y = arrow.points[-1]
    for path in side.leaf.paths:
        if path.fill and path.box.grown(NEAR).holds((x, y)):
            corners = list(dict.fromkeys(path.points))
            if len(corners) == CORNERS:
                corners.sort(key=lambda each: hypot(each[0] - x, each[1] - y))
                if hypot(corners[0][0] - x, corners[0][1] - y) <= NEAR:
                    return _length(corners)
    return 0.0


def _length(corners: list[tuple[float, float]]) -> float:
    (x, y), (a, b), (c, d) = corners
    return hypot((a + c) / 2 - x, (b + d) / 2 - y)


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        letters = [
            each.x_height for each in side.blocks if each.stretches and each.tier is Tier.ACT
        ]
        for arrow in side.flow.arrows:
            if arrow.has_head:
                least = max(TIMES_WEIGHT * arrow.weight, min(letters, default=0.0))
                found = head_length(side, arrow)
                told = _("{found} mm where {least} mm are needed").format(
                    found=decimal(f"{found:.1f}"), least=decimal(f"{least:.1f}")
                )
                where = Where(side.number, *arrow.points[-1], arrow.of)
                yield Measure(found / least, where, told)


RULE = Rule(
    id="FLO-17",
    title=N_("Heads of arrows: 3 times the line, and as high as small letters"),
    limit=at_least(N_("of the length needed"), warning=1),
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
