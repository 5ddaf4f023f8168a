"""Every page says that paper is not kept current, and how to ask."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject

_SAYS = re.compile(r"printed cop(?:y|ies) (?:is|are) (?:not kept current|uncontrolled)", re.I)


def _measure(subject: Subject) -> Iterator[Measure]:
    code = subject.terms.control.code
    for side in subject.sides:
        yield counted(not _SAYS.search(side.text), side.top, "no notice on printed copies")
        yield counted(code not in side.text, side.top, f"no stamp {code}")


RULE = Rule(
    id="DOC-02",
    title="Notice that a printed copy is not kept current, and its stamp",
    limit=NO_FAULT,
    source="document control policies, read in copies",
    mark=Mark.VERIFIED,
    measure=_measure,
)
