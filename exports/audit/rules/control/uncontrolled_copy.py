"""Every page says that paper is not kept current, and how to ask."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.language.languages import ENGLISH
from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.kinds import CONTROLLED
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.control.lines import COPIES

_SAYS = re.compile(r"printed cop(?:y|ies) (?:is|are) (?:not kept current|uncontrolled)", re.I)


def _is_said(text: str) -> bool:
    if spoken() is ENGLISH:
        return _SAYS.search(text) is not None
    return _(COPIES).partition(":")[0] in text


def _measure(subject: Subject) -> Iterator[Measure]:
    code = subject.control.code
    for side in subject.sides:
        yield counted(not _is_said(side.text), side.top, _("no notice on printed copies"))
        yield counted(code not in side.text, side.top, _("no stamp {code}").format(code=code))


RULE = Rule(
    id="DOC-02",
    title=N_("Notice that a printed copy is not kept current, and its stamp"),
    limit=NO_FAULT,
    source=N_("document control policies, read in copies"),
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=CONTROLLED,
)
