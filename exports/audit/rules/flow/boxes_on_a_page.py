"""A page holds no more boxes than can be followed.

A connector joins two ends of one line and is no box, nor is a symbol of the key. The full pathway
is read step by step, by number and column, and never taken in as one drawing: there too many boxes
are a warning.
"""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.exports.audit.kinds import DRAWN
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_most
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.paper.sheet import Outline
from chamberwise.exports.printing.order import Kind

LIMIT = at_most(N_("boxes"), error=50, warning=25)
READ_BY_NUMBER = at_most(N_("boxes"), warning=50)


def _measure(subject: Subject) -> Iterator[Measure]:
    limit = READ_BY_NUMBER if subject.terms.kind is Kind.FULL else LIMIT
    for side in subject.sides:
        boxes = sum(
            bool(each.of) and each.outline is not Outline.CONNECTOR for each in side.flow.nodes
        )
        yield Measure(boxes, side.top, limit=limit)


RULE = Rule(
    id="FLO-05",
    title=N_("Boxes on a page"),
    limit=LIMIT,
    source=N_("Mendling, Reijers and van der Aalst 2010; 25 from the area of a page"),
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=DRAWN,
)
