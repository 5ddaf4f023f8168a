"""A number and its unit stand on one line."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.quantity import NUMBER, NUMBER_START, SPACED_UNIT, UNIT_END
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject

_SPLIT = re.compile(rf"{NUMBER_START}({NUMBER})[^\S\n]?\n(?:{SPACED_UNIT}|%){UNIT_END}")


def _measure(subject: Subject) -> Iterator[Measure]:
    for _, block in subject.blocks():
        found = _SPLIT.search(block.words)
        told = f'a line ends between "{found.group(1)}" and its unit' if found else ""
        yield counted(found is not None, block.where, told)


RULE = Rule(
    id="MED-21",
    title="No line break between number and unit",
    limit=NO_FAULT,
    source="SI style, secondary copy read",
    mark=Mark.VERIFIED,
    measure=_measure,
)
