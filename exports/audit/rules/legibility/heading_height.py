"""Capitals of headings that are read across the room."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_least
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.paper.sheet import Role, Tier


def _measure(subject: Subject) -> Iterator[Measure]:
    for side, block in subject.blocks(Role.TITLE, Role.HEADING):
        if block.tier is Tier.GLANCE:
            share = block.cap_height / side.distance(Tier.GLANCE) * 155
            told = _("{share} of distance/155").format(share=decimal(f"{share:.2f}"))
            yield Measure(share, block.where, told)


RULE = Rule(
    id="LEG-03",
    title=N_("Capitals of headings reach 1/155 of the distance"),
    limit=at_least(N_("of distance/155"), warning=1),
    source=N_("German workplace rule ASR A6 for viewing further than a desk"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
