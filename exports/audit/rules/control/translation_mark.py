"""A translation that no clinician has reviewed says so on every page."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.control.content import UNREVIEWED
from chamberwise.exports.language.unreviewed import unreviewed_notice


def _measure(subject: Subject) -> Iterator[Measure]:
    if wanted := _wanted(subject):
        for side in subject.sides:
            told = _('"{text}" is not printed').format(text=wanted)
            yield counted(wanted not in side.text, side.top, told)


def _wanted(subject: Subject) -> str:
    """A paper without document control has no head for marks and says it in its foot."""
    control = subject.terms.control
    if control is None:
        return unreviewed_notice()
    return _(UNREVIEWED) if control.translation else ""


RULE = Rule(
    id="DOC-10",
    title=N_("A translation nobody has reviewed says so on every page"),
    limit=NO_FAULT,
    source=N_("requirement of this project"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
