"""Every page says: follow local protocol."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.control.content import FOLLOW


def _measure(subject: Subject) -> Iterator[Measure]:
    wanted = FOLLOW.rstrip(".").lower()
    for side in subject.sides:
        yield counted(wanted not in side.text.lower(), side.top, f'"{FOLLOW}" is not printed')


RULE = Rule(
    id="STR-17",
    title="Follow local protocol, on every page",
    limit=NO_FAULT,
    source="requirement of this project",
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
