"""Few arrows meet at one box."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.exports.audit.kinds import DRAWN
from chamberwise.exports.audit.rule import Mark, Measure, Rule, Where, at_most
from chamberwise.exports.audit.subject import Subject


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        for node, count in zip(side.flow.nodes, side.flow.degrees, strict=True):
            yield Measure(count, Where(side.number, node.x, node.y, node.of))


RULE = Rule(
    id="FLO-12",
    title=N_("Arrows at one box"),
    limit=at_most(N_("arrows"), warning=5),
    source=N_("Mendling, Reijers and van der Aalst 2010; the number is common practice"),
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=DRAWN,
)
