"""Words stand out from their ground."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.colour.contrast import contrast
from chamberwise.exports.audit.inked import to_act_on
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_least
from chamberwise.exports.audit.subject import Subject


def _measure(subject: Subject) -> Iterator[Measure]:
    for each in to_act_on(subject):
        found = contrast(each.stretch.ink, each.ground)
        yield Measure(found, each.where, _("{found} to 1").format(found=decimal(f"{found:.2f}")))


RULE = Rule(
    id="COL-01",
    title=N_("Contrast of words to be acted on"),
    limit=at_least(N_("to 1"), error=4.5, warning=7),
    source=N_("WCAG 2.2, 1.4.3 and 1.4.6"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
