"""Colours that mean different things differ in lightness."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.audit.colour.lightness import lightness
from chamberwise.exports.audit.inked import pairs
from chamberwise.exports.audit.rule import Mark, Measure, Rule, Where, at_least
from chamberwise.exports.audit.subject import Subject


def _measure(subject: Subject) -> Iterator[Measure]:
    for one, other in pairs(subject):
        found = abs(lightness(one) - lightness(other))
        yield Measure(found, Where(text=f"{one} and {other}"), f"{found:.1f} L*")


RULE = Rule(
    id="COL-07",
    title="Lightness apart in a grey print",
    limit=at_least("L*", warning=15),
    source="common practice, no source",
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
