"""Review comes within three years of approval."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.kinds import CONTROLLED
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_most
from chamberwise.exports.audit.subject import Subject

YEAR = 365.25
LEAP = 1
"""Three years hold one leap day, now and then."""


def _measure(subject: Subject) -> Iterator[Measure]:
    control = subject.control
    span = (control.review_by - (control.approved_on or control.reviewed)).days
    years = (span - LEAP) / YEAR
    yield Measure(years, told=_("{number} years").format(number=decimal(f"{span / YEAR:.1f}")))


RULE = Rule(
    id="DOC-03",
    title=N_("Years from approval to review"),
    limit=at_most(N_("years"), warning=3),
    source=N_("normally within 3 years, read in policies"),
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=CONTROLLED,
)
