"""More states than are looked at: nothing is claimed about what walks can come to."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity

CODE = Code(
    "too-many-states",
    Severity.WARNING,
    "Too many states to look at them all",
    "What was not looked at may hold a walk that goes wrong.",
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem when the exploration stopped at its limit."""
    for found in subject.sightings[:1]:
        if found.stopped:
            message = f"stopped after {len(found):,} states"
            advice = "Let actions make findings stale sooner, or split the pathway by a handover."
            yield subject.problem(CODE, ("pathway",), message, advice)
