"""Lines are neither too long nor too short.

The foot is a row of fields that are looked up, not read through, and is left out.
"""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.kinds import RUNNING
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_least, at_most
from chamberwise.exports.audit.subject import Subject

LONG = at_most(N_("characters"), error=80, warning=60)
SHORT = at_least(N_("characters"), warning=13)
RUNNING_LINES = 3


def _measure(subject: Subject) -> Iterator[Measure]:
    for _where, block in subject.blocks(*RUNNING):
        longest = max(len(line.text.strip()) for line in block.lines)
        told = _("{longest} characters").format(longest=longest)
        yield Measure(longest, block.where, told)
        if len(block.lines) >= RUNNING_LINES:
            yield Measure(longest, block.where, told, SHORT)


RULE = Rule(
    id="LEG-12",
    title=N_("Characters a line"),
    limit=LONG,
    source=N_("print range 45 to 75; WCAG 1.4.8, 80 at most; 13 for four fifths of reading speed"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
