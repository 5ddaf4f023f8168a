"""More states than are looked at: nothing is claimed about what walks can come to."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.numbers import thousands
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

CODE = Code(
    "too-many-states",
    Severity.WARNING,
    N_("Too many states to look at them all"),
    N_("What was not looked at may hold a walk that goes wrong."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem when the exploration stopped at its limit."""
    for found in subject.sightings[:1]:
        if found.stopped:
            message = _("stopped after {count} states").format(count=thousands(len(found)))
            advice = _(
                "Let actions make findings stale sooner, or split the pathway by a handover."
            )
            yield subject.problem(CODE, ("pathway",), message, advice)
