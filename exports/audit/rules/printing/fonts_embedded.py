"""Every font is in the file."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, Where, counted
from chamberwise.exports.audit.subject import Subject


def _measure(subject: Subject) -> Iterator[Measure]:
    for face in subject.printed.faces:
        yield counted(
            not face.is_embedded, Where(), _("{name} is not in the file").format(name=face.name)
        )


RULE = Rule(
    id="PRT-05",
    title=N_("Every font is embedded"),
    limit=NO_FAULT,
    source=N_("rule of PDF/A, checked on the font's descriptor"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
