"""Letters can be too large to take in a line at a glance."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_most
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.legibility.angle import angle

RUNNING_WORDS = 8
"""From so many words on it is running text, ours."""
GROUP = at_most(N_("minutes of arc"), warning=45)
RUNNING_TEXT = at_most(N_("minutes of arc"), warning=31)


def _measure(subject: Subject) -> Iterator[Measure]:
    for side, block in subject.to_act_on():
        words = len(block.flat.split())
        if words > 1:
            found = angle(block.cap_height, side.distance(block.tier))
            limit = RUNNING_TEXT if words >= RUNNING_WORDS else GROUP
            yield Measure(
                found,
                block.where,
                _("{found} minutes of arc").format(found=decimal(f"{found:.1f}")),
                limit,
            )


RULE = Rule(
    id="LEG-04",
    title=N_("Capitals of several words are not too large for their distance"),
    limit=GROUP,
    source=N_("NUREG-0700, 45 for groups of characters; ASR A6, distance/110 for running text"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
