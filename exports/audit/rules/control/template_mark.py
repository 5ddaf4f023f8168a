"""The sheet names the unit it belongs to, or says TEMPLATE."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.control.content import TEMPLATE


def _measure(subject: Subject) -> Iterator[Measure]:
    wanted = subject.terms.control.unit or TEMPLATE
    for side in subject.sides:
        yield counted(wanted not in side.text, side.top, f'"{wanted}" is not printed')


RULE = Rule(
    id="DOC-09",
    title="The unit's name, or TEMPLATE, on every page",
    limit=NO_FAULT,
    source="common practice, no source",
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
