"""Colours that mean different things differ in lightness."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.colour.lightness import lightness
from chamberwise.exports.audit.inked import pairs
from chamberwise.exports.audit.rule import Mark, Measure, Rule, Where, at_least
from chamberwise.exports.audit.subject import Subject


def _measure(subject: Subject) -> Iterator[Measure]:
    for one, other in pairs(subject):
        found = abs(lightness(one) - lightness(other))
        yield Measure(
            found,
            Where(text=_("{one} and {other}").format(one=one, other=other)),
            _("{found} L*").format(found=decimal(f"{found:.1f}")),
        )


RULE = Rule(
    id="COL-07",
    title=N_("Lightness apart in a grey print"),
    limit=at_least("L*", warning=15),
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
