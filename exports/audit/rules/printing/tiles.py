"""Tiles overlap, say which they are, and have marks to cut by."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.geometry import segments
from chamberwise.exports.audit.patterns import pattern_of
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
from chamberwise.exports.tiling.cutting import LABEL

OVERLAP = at_least("mm", warning=10)
CROP_MARKS = 4
LONGEST_MARK = 15.0


def _measure(subject: Subject) -> Iterator[Measure]:
    tiling = subject.terms.tiling
    if tiling is None:
        return
    yield Measure(
        tiling.overlap,
        told=_("{overlap} mm overlap").format(overlap=decimal(f"{tiling.overlap:g}")),
        limit=OVERLAP,
    )
    label = pattern_of(_(LABEL), label=r"\d+\.\d+", count=r"\d+")
    labelled = [side for side in subject.sides if label.search(side.text)]
    missing = tiling.rows * tiling.columns - len(labelled)
    yield counted(
        missing != 0, Where(), _("{missing} tiles without their label").format(missing=missing)
    )
    for side in labelled:
        found = len(_marks(side))
        yield counted(found < CROP_MARKS, side.top, _("{found} crop marks").format(found=found))


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
    title=N_("Tiles overlap by 10 mm, with crop marks and a label"),
    limit=NO_FAULT_WARNED,
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
