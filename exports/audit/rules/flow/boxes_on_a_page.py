"""A page holds no more boxes than can be followed."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.audit.kinds import DRAWN
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_most
from chamberwise.exports.audit.subject import Subject


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        yield Measure(len(side.flow.nodes), side.top)


RULE = Rule(
    id="FLO-05",
    title="Boxes on a page",
    limit=at_most("boxes", error=50, warning=25),
    source="Mendling, Reijers and van der Aalst 2010; 25 from the area of a page",
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=DRAWN,
)
