"""The file paints every line and symbol where it was placed, and no other.

What is placed is held to the pathway by the other rules; this one holds the file to what is placed,
so that no arrow ends elsewhere on paper.
"""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.figures import Figure, differences
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, Where, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.language.values import told as told_value


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        missing, strange = differences(side.page, side.leaf)
        for each in missing:
            told = _("a {kind} is not painted where it was placed").format(
                kind=told_value(each.kind)
            )
            yield counted(True, _where(side.number, each), told)
        for each in strange:
            yield counted(
                True,
                _where(side.number, each),
                _("a {kind} that was not placed").format(kind=told_value(each.kind)),
            )
        if not missing and not strange:
            yield counted(False, side.top, "")


def _where(page: int, figure: Figure) -> Where:
    x, y = figure.points[0]
    return Where(page, x, y)


RULE = Rule(
    id="FLO-19",
    title=N_("Lines and symbols are painted as placed, and no others"),
    limit=NO_FAULT,
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
