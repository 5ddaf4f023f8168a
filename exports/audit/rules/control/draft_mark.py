"""Without an approver every page says DRAFT."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.kinds import CONTROLLED
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.control.content import DRAFT


def _measure(subject: Subject) -> Iterator[Measure]:
    if not subject.control.is_approved:
        for side in subject.sides:
            yield counted(
                _(DRAFT) not in side.text,
                side.top,
                _('"{text}" is not printed').format(text=_(DRAFT)),
            )


RULE = Rule(
    id="DOC-05",
    title=N_("DRAFT on every page until somebody approves"),
    limit=NO_FAULT,
    source=N_("ISO 9001 clause 7.5, read in copies"),
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=CONTROLLED,
)
