"""Arrows do not cross."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.audit.rule import Mark, Measure, Rule, Where, at_most
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.audit.tangle import most_crossings, tangled


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        if side.flow.links:
            found = list(tangled(side.flow))
            most = most_crossings(side.flow)
            freedom = 1 - len(found) / most if most > 0 else 1.0
            told = f"{len(found)} crossings, {freedom:.2f} free of the {most} possible"
            where = Where(side.number, *found[0].point) if found else side.top
            yield Measure(len(found), where, told)


RULE = Rule(
    id="FLO-06",
    title="Crossings of arrows on a page",
    limit=at_most("crossings", error=2, warning=0),
    source="Purchase 1997; share free of crossings: Purchase 2002",
    mark=Mark.VERIFIED,
    measure=_measure,
)
