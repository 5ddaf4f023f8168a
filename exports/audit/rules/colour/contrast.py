"""Words stand out from their ground."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.audit.colour.contrast import contrast
from chamberwise.exports.audit.inked import to_act_on
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_least
from chamberwise.exports.audit.subject import Subject


def _measure(subject: Subject) -> Iterator[Measure]:
    for each in to_act_on(subject):
        found = contrast(each.stretch.ink, each.ground)
        yield Measure(found, each.where, f"{found:.2f} to 1")


RULE = Rule(
    id="COL-01",
    title="Contrast of words to be acted on",
    limit=at_least("to 1", error=4.5, warning=7),
    source="WCAG 2.2, 1.4.3 and 1.4.6",
    mark=Mark.VERIFIED,
    measure=_measure,
)
