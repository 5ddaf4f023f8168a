"""A value with two answers, or more answers than a frightened team can weigh."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Question

CODE = Code(
    "answers-overlap",
    Severity.ERROR,
    N_("One finding, two answers"),
    N_("Two people would answer the same finding differently and be led apart."),
)

MOST = 5


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every value that two answers stand for, and for more than five."""
    for step in subject.pathway.steps.values():
        if not isinstance(step, Question):
            continue
        first: dict[str, str] = {}
        for answer in step.answers:
            for value in answer.means:
                at = ("steps", step.id, "answers", answer.id)
                if value in first:
                    message = _("`{value}` is answered by `{first}` and by `{answer}`").format(
                        value=value, first=first[value], answer=answer.id
                    )
                    advice = _("Let each value stand in one answer.")
                    yield subject.problem(CODE, at, message, advice, at_key=True)
                first.setdefault(value, answer.id)
        if len(step.answers) > MOST:
            message = _("`{step}` offers {count} answers").format(
                step=step.id, count=len(step.answers)
            )
            advice = _("Put values together under `means:` and ask again, or split the finding.")
            where = ("steps", step.id, "answers")
            yield subject.problem(CODE, where, message, advice)
