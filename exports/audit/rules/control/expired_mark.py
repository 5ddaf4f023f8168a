"""Past its review date every page says EXPIRED."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, Where, at_most, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.control.content import EXPIRED

SOON = timedelta(days=183)
NOTICE = at_most("faults", note=0)


def _measure(subject: Subject) -> Iterator[Measure]:
    control = subject.terms.control
    if control.made > control.review_by:
        for side in subject.sides:
            yield counted(EXPIRED not in side.text, side.top, f'"{EXPIRED}" is not printed')
    else:
        is_soon = control.review_by - control.made <= SOON
        yield counted(is_soon, Where(), "review is due within 6 months", NOTICE)


RULE = Rule(
    id="DOC-04",
    title="EXPIRED past the review date",
    limit=NO_FAULT,
    source="review starts 6 months before expiry, read in a policy",
    mark=Mark.VERIFIED,
    measure=_measure,
)
