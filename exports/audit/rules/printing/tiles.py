"""Tiles overlap, say which they are, and have marks to cut by."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.exports.audit.geometry import segments
from chamberwise.exports.audit.rule import (
    NO_FAULT_WARNED,
    Mark,
    Measure,
    Rule,
    Where,
    at_least,
    counted,
)
from chamberwise.exports.audit.subject import Side, Subject
from chamberwise.exports.paper.sheet import Arrow

OVERLAP = at_least("mm", warning=10)
CROP_MARKS = 4
LONGEST_MARK = 15.0
LABEL = re.compile(r"\b(\d+)\.(\d+) of (\d+)\b")


def _measure(subject: Subject) -> Iterator[Measure]:
    tiling = subject.terms.tiling
    if tiling is None:
        return
    yield Measure(tiling.overlap, told=f"{tiling.overlap:g} mm overlap", limit=OVERLAP)
    labelled = [side for side in subject.sides if LABEL.search(side.text)]
    missing = tiling.rows * tiling.columns - len(labelled)
    yield counted(missing != 0, Where(), f"{missing} tiles without their label")
    for side in labelled:
        found = len(_marks(side))
        yield counted(found < CROP_MARKS, side.top, f"{found} crop marks")


def _marks(side: Side) -> list[Arrow]:
    return [
        item
        for item in side.page.items
        if isinstance(item, Arrow)
        and not item.has_head
        and all(
            abs(a[0] - b[0]) + abs(a[1] - b[1]) <= LONGEST_MARK for a, b in segments(item.points)
        )
    ]


RULE = Rule(
    id="PRT-04",
    title="Tiles overlap by 10 mm, with crop marks and a label",
    limit=NO_FAULT_WARNED,
    source="common practice, no source",
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
