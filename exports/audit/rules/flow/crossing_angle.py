"""Where arrows must cross they cross steeply."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import Mark, Measure, Rule, Where, at_least
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.audit.tangle import tangled


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        for point, angle in tangled(side.flow):
            yield Measure(
                angle,
                Where(side.number, *point),
                _("{angle} degrees").format(angle=decimal(f"{angle:.0f}")),
            )


RULE = Rule(
    id="FLO-07",
    title=N_("Angle of crossings"),
    limit=at_least(N_("degrees"), error=45, warning=70),
    source=N_("Huang on crossing angles; the numbers are common practice"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
