"""No sloping letters."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.exports.audit.block import where_of
from chamberwise.exports.audit.rule import (
    NO_FAULT_WARNED,
    Mark,
    Measure,
    Rule,
    counted,
)
from chamberwise.exports.audit.subject import Subject

LEANS = 0.05


def _measure(subject: Subject) -> Iterator[Measure]:
    sloping = {face.name for face in subject.printed.faces if face.is_italic}
    for side in subject.sides:
        for stretch in side.leaf.stretches:
            is_italic = (
                stretch.font in sloping
                or any(word in stretch.font.lower() for word in ("italic", "oblique"))
                or abs(stretch.slant) > LEANS
            )
            yield counted(is_italic, where_of(stretch, side.number), "italic")


RULE = Rule(
    id="LEG-16",
    title=N_("No italics"),
    limit=NO_FAULT_WARNED,
    source=N_("NASA CR-177605 list"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
