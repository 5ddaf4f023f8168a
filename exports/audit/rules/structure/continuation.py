"""Every page says which it is, and a flow that runs on says where."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.kinds import ON_THE_WALL
from chamberwise.exports.audit.patterns import pattern_of
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import PLAIN, Side, Subject
from chamberwise.exports.paper.sheet import Role

_ON = re.compile(
    r"\b(?:continue[sd]?|continued on|page \d+|weiter|fortsetzung|fortgesetzt|seite \d+)\b",
    re.IGNORECASE,
)


def _measure(subject: Subject) -> Iterator[Measure]:
    pages = len(subject.sides)
    numbered = pattern_of(_("Page {page} of {pages}"), page=r"\d+", pages=r"\d+")
    for side in subject.sides:
        said = numbered.search(side.text)
        right = said is not None and said.groups() == (str(side.number), str(pages))
        told = _('does not say "Page {number} of {pages}"').format(number=side.number, pages=pages)
        yield counted(not right, side.top, told)
        if subject.terms.kind in ON_THE_WALL and side.number < pages:
            yield counted(not _runs_on(side), side.top, _("does not say where it continues"))


def _runs_on(side: Side) -> bool:
    return any(
        _ON.search(each.flat.translate(PLAIN))
        for each in side.blocks
        if each.role is not Role.FOOTER
    )


RULE = Rule(
    id="STR-08",
    title=N_("Page x of y on each page, and where a flow continues"),
    limit=NO_FAULT,
    source=N_("Gawande 2010, one page; continuation: CAP 676, from memory"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
