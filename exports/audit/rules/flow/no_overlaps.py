"""Nothing lies on anything: boxes, arrows, words."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.exports.audit.overlaps import overlaps
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        found = list(overlaps(side))
        for each in found:
            yield counted(True, each.where, each.what)
        if not found:
            yield counted(False, side.top, "")


RULE = Rule(
    id="FLO-09",
    title=N_("Nothing overlaps: boxes, arrows, words"),
    limit=NO_FAULT,
    source=N_("common practice; Dunne and Shneiderman 2009, from memory"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
