"""A bar of 100 mm shows whether the printer kept the size."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.kinds import CONTROLLED
from chamberwise.exports.audit.rule import NO_FAULT_WARNED, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Side, Subject

LENGTH, SLACK = 100.0, 0.3
_SAID = re.compile(r"\b100 ?%")


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        yield counted(not _has_bar(side), side.top, _("no bar of 100 mm"))
        yield counted(not _SAID.search(side.text), side.top, _('no "print at 100 %"'))


def _has_bar(side: Side) -> bool:
    return any(
        path.stroke
        and abs(path.box.width - path.weight - LENGTH) < SLACK + path.weight
        and path.box.height < 1
        for path in side.leaf.paths
    )


RULE = Rule(
    id="PRT-12",
    title=N_("A bar of 100 mm, and print at 100 %"),
    limit=NO_FAULT_WARNED,
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
    kinds=CONTROLLED,
)
