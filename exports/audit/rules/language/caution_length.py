"""Cautions and notes are short."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.wording.sentences import sentences, words
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_most
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.paper.sheet import Role

SENTENCES = at_most(N_("sentences"), error=6, warning=3)


def _measure(subject: Subject) -> Iterator[Measure]:
    for _where, block in subject.blocks(Role.CAUTION, Role.NOTE):
        found = list(sentences(block.flat))
        for start, end in found:
            yield Measure(len(words(block.flat, start, end)), block.where)
        yield Measure(
            len(found), block.where, _("{count} sentences").format(count=len(found)), SENTENCES
        )


RULE = Rule(
    id="LAN-02",
    title=N_("Words in a sentence of a caution or note; sentences of it"),
    limit=at_most(N_("words"), warning=25),
    source=N_("ASD-STE100, 25 words, 6 sentences (secondary source read)"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
