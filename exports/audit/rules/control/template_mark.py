"""The sheet names the unit it belongs to, or says TEMPLATE."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.kinds import CONTROLLED
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.control.content import TEMPLATE


def _measure(subject: Subject) -> Iterator[Measure]:
    wanted = subject.control.unit or _(TEMPLATE)
    for side in subject.sides:
        yield counted(
            wanted not in side.text, side.top, _('"{text}" is not printed').format(text=wanted)
        )


RULE = Rule(
    id="DOC-09",
    title=N_("The unit's name, or TEMPLATE, on every page"),
    limit=NO_FAULT,
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
    kinds=CONTROLLED,
)
