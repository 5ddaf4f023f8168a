"""A decision has two ways out or more, each with its answer beside it.

A question may be asked for the sake of what comes later: its one way out then names every answer.
"""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.exits import Exits, exits
from chamberwise.exports.audit.kinds import DRAWN
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject

LEAST = 2
SEVERAL = (" OR ", " ODER ", ", ")


def _measure(subject: Subject) -> Iterator[Measure]:
    for _where, one in exits(subject):
        told = _fault(one)
        yield counted(bool(told), one.where, told)


def _fault(one: Exits) -> str:
    if one.count < LEAST and not _names_every_answer(one):
        return _("{number} way out").format(number=one.count)
    named = {each.text.of for each in one.answers if each.flat}
    bare = [link.arrow.of for link in one.links if link.arrow.of not in named]
    return _("{count} ways out without an answer").format(count=len(bare)) if bare else ""


def _names_every_answer(one: Exits) -> bool:
    return one.is_asked and any(several in each.flat for each in one.answers for several in SEVERAL)


RULE = Rule(
    id="FLO-02",
    title=N_("A decision has two exits or more, each labelled"),
    limit=NO_FAULT,
    source=N_("flowchart rules, one entry and two or more exits (secondary source)"),
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=DRAWN,
)
