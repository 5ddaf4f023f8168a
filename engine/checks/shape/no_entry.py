"""One entry: `start` names a step of the file."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

CODE = Code(
    "no-entry",
    Severity.ERROR,
    N_("The first step is not there"),
    N_("Nobody would know where to begin."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem when `start` names no step."""
    start = subject.pathway.start
    if start and subject.written_steps and start not in subject.written_steps:
        message = _("the entry `{start}` is no step of this file").format(start=start)
        advice = did_you_mean(start, subject.written_steps, _("Name the first step."))
        yield subject.problem(CODE, ("start",), message, advice)
