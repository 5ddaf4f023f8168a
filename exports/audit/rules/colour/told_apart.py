"""Colours that mean different things look different."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.colour.vision import difference
from chamberwise.exports.audit.inked import pairs
from chamberwise.exports.audit.rule import Mark, Measure, Rule, Where, at_least
from chamberwise.exports.audit.subject import Subject


def _measure(subject: Subject) -> Iterator[Measure]:
    for one, other in pairs(subject):
        found = difference(one, other)
        yield Measure(
            found,
            Where(text=_("{one} and {other}").format(one=one, other=other)),
            decimal(f"{found:.1f}"),
        )


RULE = Rule(
    id="COL-05",
    title=N_("CIEDE2000 between colours that mean something"),
    limit=at_least("CIEDE2000", warning=20),
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
