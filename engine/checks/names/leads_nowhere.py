"""An answer, action, row or exit that leads to a step that does not exist."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.graph.targets import all_targets

CODE = Code(
    "leads-nowhere",
    Severity.ERROR,
    "An arrow to a step that does not exist",
    "The team would follow it and find nothing there.",
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every arrow whose step is not in the file."""
    for step, target in all_targets(subject.pathway):
        if target.step and target.step not in subject.written_steps:
            which = f"`{target.label}` of `{step.id}`" if target.label else f"`{step.id}`"
            message = f"{which} leads to `{target.step}`, which is no step of this file"
            advice = did_you_mean(target.step, subject.written_steps, "Write the step.")
            yield subject.problem(CODE, target.pointer, message, advice)
