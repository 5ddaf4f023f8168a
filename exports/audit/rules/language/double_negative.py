"""One negator a sentence; two that act on each other are an error."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.wording import double_negative
from chamberwise.engine.checks.wording.negation import negators
from chamberwise.engine.checks.wording.sentences import sentences
from chamberwise.engine.language.languages import GERMAN
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.german import negation
from chamberwise.exports.audit.kinds import CONTENT, QUOTING
from chamberwise.exports.audit.rule import EVERY_KIND, NO_FAULT, Mark, Measure, Rule, at_most
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.audit.wording import hits
from chamberwise.exports.paper.sheet import Role

TO_BE_OBEYED = tuple(each for each in CONTENT if each is not Role.NOTE)
"""Reasons may argue."""
NEGATORS = at_most(N_("negators in a sentence"), warning=1)


def _measure(subject: Subject) -> Iterator[Measure]:
    yield from hits(subject, double_negative.RULE, TO_BE_OBEYED, _german)
    for _where, block in subject.blocks(*CONTENT):
        for start, end in sentences(block.flat):
            count = len(list(negators(block.flat, start, end)))
            if subject.sheet.language == GERMAN.code:
                count = max(count, len(negation.negators(block.flat[start:end])))
            yield Measure(
                count,
                block.where,
                _("{number} negators in a sentence").format(number=count),
                NEGATORS,
            )


def _german(text: str) -> Iterator[str]:
    for start, end in sentences(text):
        yield from negation.double_negative(text[start:end])


RULE = Rule(
    id="LAN-06",
    title=N_("One negator a sentence"),
    limit=NO_FAULT,
    source="Just and Clark 1973 (secondary source read)",
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=EVERY_KIND - QUOTING,
)
