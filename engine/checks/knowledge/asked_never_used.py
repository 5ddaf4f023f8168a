"""A question whose answers all lead to one step, on a finding nothing else looks at."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Branch, Question

CODE = Code(
    "asked-never-used",
    Severity.WARNING,
    N_("A finding asked and never used"),
    N_("A question costs the team seconds; one that changes nothing should not be asked."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every question that makes no difference."""
    used = _used(subject)
    for step in subject.pathway.steps.values():
        if not isinstance(step, Question) or step.ask in used:
            continue
        if step.ask not in subject.words.findings:
            continue
        if len({answer.go_to for answer in step.answers}) == 1 and step.answers:
            message = _("`{finding}` is asked, and every answer leads to `{target}`").format(
                finding=step.ask, target=step.answers[0].go_to
            )
            advice = _("Lead the answers apart, use the finding in a branch, or drop the question.")
            yield subject.problem(CODE, ("steps", step.id, "ask"), message, advice)


def _used(subject: Subject) -> set[str]:
    """Return the findings that some branch of the library, or another question, depends on."""
    used: set[str] = set()
    for pathway in subject.library.pathways.values():
        for step in pathway.steps.values():
            if isinstance(step, Branch):
                used.update(name for row in step.rows for name, _values in row.when.terms)
            elif isinstance(step, Question) and len({each.go_to for each in step.answers}) > 1:
                used.add(step.ask)
    return used
