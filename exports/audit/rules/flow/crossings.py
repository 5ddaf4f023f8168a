"""Arrows do not cross."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import Mark, Measure, Rule, Where, at_most
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.audit.tangle import most_crossings, tangled


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        if side.flow.links:
            found = list(tangled(side.flow))
            most = most_crossings(side.flow)
            freedom = 1 - len(found) / most if most > 0 else 1.0
            told = _("{count} crossings, {freedom} free of the {most} possible").format(
                count=len(found), freedom=decimal(f"{freedom:.2f}"), most=most
            )
            where = Where(side.number, *found[0].point) if found else side.top
            yield Measure(len(found), where, told)


RULE = Rule(
    id="FLO-06",
    title=N_("Crossings of arrows on a page"),
    limit=at_most(N_("crossings"), error=2, warning=0),
    source=N_("Purchase 1997; share free of crossings: Purchase 2002"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
