"""Notes and the foot can be read at arm's length."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_least
from chamberwise.exports.audit.rules.legibility.least_angle import angle_of
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.paper.sheet import Tier


def _measure(subject: Subject) -> Iterator[Measure]:
    for side, block in subject.blocks():
        if block.tier is Tier.REFER:
            yield angle_of(side, block)


RULE = Rule(
    id="LEG-06",
    title=N_("Notes and the foot are large enough at half a metre"),
    limit=at_least(N_("minutes of arc"), error=12),
    source=N_("lower edge of the range of fluent reading (Legge and Bigelow 2011)"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
