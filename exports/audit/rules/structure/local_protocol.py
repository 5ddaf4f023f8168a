"""Every page says: follow local protocol."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.control.content import FOLLOW


def _measure(subject: Subject) -> Iterator[Measure]:
    wanted = _(FOLLOW).rstrip(".").lower()
    for side in subject.sides:
        yield counted(
            wanted not in side.text.lower(),
            side.top,
            _('"{text}" is not printed').format(text=_(FOLLOW)),
        )


RULE = Rule(
    id="STR-17",
    title=N_("Follow local protocol, on every page"),
    limit=NO_FAULT,
    source=N_("requirement of this project"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
