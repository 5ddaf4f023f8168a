"""One negator a sentence; two that act on each other are an error."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.wording import double_negative
from chamberwise.engine.checks.wording.negation import negators
from chamberwise.engine.checks.wording.sentences import sentences
from chamberwise.exports.audit.kinds import CONTENT
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, at_most
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.audit.wording import hits
from chamberwise.exports.paper.sheet import Role

TO_BE_OBEYED = tuple(each for each in CONTENT if each is not Role.NOTE)
"""Reasons may argue."""
NEGATORS = at_most("negators in a sentence", warning=1)


def _measure(subject: Subject) -> Iterator[Measure]:
    yield from hits(subject, double_negative.RULE, TO_BE_OBEYED)
    for _, block in subject.blocks(*CONTENT):
        for start, end in sentences(block.flat):
            count = len(list(negators(block.flat, start, end)))
            yield Measure(count, block.where, f"{count} negators in a sentence", NEGATORS)


RULE = Rule(
    id="LAN-06",
    title="One negator a sentence",
    limit=NO_FAULT,
    source="Just and Clark 1973 (secondary source read)",
    mark=Mark.VERIFIED,
    measure=_measure,
)
