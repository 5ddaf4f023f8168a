"""An answer, action, row or exit that leads to a step that does not exist."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.graph.targets import Target, all_targets
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

CODE = Code(
    "leads-nowhere",
    Severity.ERROR,
    N_("An arrow to a step that does not exist"),
    N_("The team would follow it and find nothing there."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every arrow whose step is not in the file."""
    for step, target in all_targets(subject.pathway):
        if target.step and target.step not in subject.written_steps:
            message = _("`{step}` leads to `{target}`, which is no step of this file")
            if target.label:
                message = _(
                    "`{label}` of `{step}` leads to `{target}`, which is no step of this file"
                )
            message = message.format(label=_label(target), step=step.id, target=target.step)
            advice = did_you_mean(target.step, subject.written_steps, _("Write the step."))
            yield subject.problem(CODE, target.pointer, message, advice)


def _label(target: Target) -> str:
    *_above, key, row, _last = target.pointer
    if key == "branch" and isinstance(row, int):
        return _("row {number}").format(number=row + 1)
    return target.label
