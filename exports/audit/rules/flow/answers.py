"""A question offers few answers."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.exports.audit.exits import exits
from chamberwise.exports.audit.kinds import DRAWN
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_most
from chamberwise.exports.audit.subject import Subject


def _measure(subject: Subject) -> Iterator[Measure]:
    for _, one in exits(subject):
        if one.is_asked:
            yield Measure(one.count, one.where)


RULE = Rule(
    id="FLO-03",
    title=N_("Answers to a question"),
    limit=at_most(N_("answers"), error=5, warning=4),
    source=N_("Hick 1952; Cowan 2001; the cut-off is common practice"),
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=DRAWN,
)
