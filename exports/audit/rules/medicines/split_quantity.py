"""A number and its unit stand on one line."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.quantity import NUMBER, NUMBER_START, SPACED_UNIT, UNIT_END
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.german import quantities
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject

_TIME = "s|min|h|seconds?|minutes?|hours?|days?|weeks?"
_SPLIT = re.compile(rf"{NUMBER_START}({NUMBER})[^\S\n]?\n(?:{SPACED_UNIT}|%|m|{_TIME}){UNIT_END}")


def _measure(subject: Subject) -> Iterator[Measure]:
    for _where, block in subject.blocks():
        found = _SPLIT.search(block.words)
        number = found.group(1) if found else quantities.split_quantity(block.words)
        told = _('a line ends between "{number}" and its unit').format(number=number)
        yield counted(bool(number), block.where, told)


RULE = Rule(
    id="MED-21",
    title=N_("No line break between number and unit"),
    limit=NO_FAULT,
    source=N_("SI style, secondary copy read"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
