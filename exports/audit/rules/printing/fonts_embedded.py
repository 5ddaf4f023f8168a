"""Every font is in the file."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, Where, counted
from chamberwise.exports.audit.subject import Subject


def _measure(subject: Subject) -> Iterator[Measure]:
    for face in subject.printed.faces:
        yield counted(not face.is_embedded, Where(), f"{face.name} is not in the file")


RULE = Rule(
    id="PRT-05",
    title="Every font is embedded",
    limit=NO_FAULT,
    source="rule of PDF/A, checked on the font's descriptor",
    mark=Mark.VERIFIED,
    measure=_measure,
)
