"""Lines stand far enough apart."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_least
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.legibility.angle import MM_PER_POINT


def _measure(subject: Subject) -> Iterator[Measure]:
    for _, block in subject.blocks():
        for above, below in zip(block.lines, block.lines[1:], strict=False):
            size = max(above.size, below.size) * MM_PER_POINT
            # Rounded to what a writer of PDF keeps of a coordinate.
            yield Measure(round((below.across - above.across) / size, 3), block.where)


RULE = Rule(
    id="LEG-11",
    title=N_("Line pitch over type size"),
    limit=at_least("em", error=1.20, warning=1.25),
    source=N_("NASA CR-177605 list, gap of 25 to 33 %"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
