"""In a dim room letters are larger."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_least
from chamberwise.exports.audit.rules.legibility.least_angle import angles
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.audit.terms import DIM_ANGLE, Lighting


def _measure(subject: Subject) -> Iterator[Measure]:
    if subject.terms.lighting is Lighting.DIM:
        yield from angles(subject)


RULE = Rule(
    id="LEG-08",
    title=N_("Small letters are large enough in dim light, if that was declared"),
    limit=at_least(N_("minutes of arc"), error=DIM_ANGLE),
    source=N_("ANSI Z535.2, unfavourable conditions, capitals of distance/144"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
