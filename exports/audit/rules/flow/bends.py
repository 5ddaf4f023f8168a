"""Arrows bend seldom."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.geometry import bends
from chamberwise.exports.audit.rule import Mark, Measure, Rule, Where, at_most
from chamberwise.exports.audit.subject import Subject

MEAN = at_most(N_("bends an arrow"), warning=1)


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        found = [(arrow, bends(arrow.points)) for arrow in side.flow.arrows]
        for arrow, count in found:
            yield Measure(
                count,
                Where(side.number, *arrow.points[0], arrow.of),
                _("{count} bends").format(count=count),
            )
        if found:
            mean = sum(count for _where, count in found) / len(found)
            yield Measure(
                mean, side.top, _("{mean} bends an arrow").format(mean=decimal(f"{mean:.2f}")), MEAN
            )


RULE = Rule(
    id="FLO-08",
    title=N_("Bends: 2 an arrow, 1 in the mean"),
    limit=at_most(N_("bends"), warning=2),
    source="Purchase 1997",
    mark=Mark.VERIFIED,
    measure=_measure,
)
