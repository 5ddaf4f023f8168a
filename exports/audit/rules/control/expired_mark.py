"""Past its review date every page says EXPIRED."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.kinds import CONTROLLED
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, Where, at_most, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.control.content import EXPIRED

SOON = timedelta(days=183)
NOTICE = at_most(N_("faults"), note=0)


def _measure(subject: Subject) -> Iterator[Measure]:
    control = subject.control
    if control.made > control.review_by:
        for side in subject.sides:
            yield counted(
                _(EXPIRED) not in side.text,
                side.top,
                _('"{text}" is not printed').format(text=_(EXPIRED)),
            )
    else:
        is_soon = control.review_by - control.made <= SOON
        yield counted(is_soon, Where(), _("review is due within 6 months"), NOTICE)


RULE = Rule(
    id="DOC-04",
    title=N_("EXPIRED past the review date"),
    limit=NO_FAULT,
    source=N_("review starts 6 months before expiry, read in a policy"),
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=CONTROLLED,
)
