"""What is to be done is said in few words; the cells of tables hold lists and are left out."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.wording.sentences import sentences, words
from chamberwise.engine.language.texts import N_
from chamberwise.exports.audit.kinds import TABLES, TELLING, TO_DO
from chamberwise.exports.audit.rule import EVERY_KIND, Mark, Measure, Rule, at_most
from chamberwise.exports.audit.subject import Subject


def _measure(subject: Subject) -> Iterator[Measure]:
    for _, block in subject.blocks(*TO_DO):
        for start, end in sentences(block.flat):
            yield Measure(len(words(block.flat, start, end)), block.where)


RULE = Rule(
    id="LAN-01",
    title=N_("Words in a sentence to act on"),
    limit=at_most(N_("words"), error=20, warning=12),
    source=N_("ASD-STE100, 20 words (secondary source read); 12 is common practice"),
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=EVERY_KIND - TABLES - TELLING,
)
