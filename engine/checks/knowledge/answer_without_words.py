"""An answer that stands for several values and has no words of its own."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Question

CODE = Code(
    "answer-without-words",
    Severity.WARNING,
    N_("Several values under one answer, and no words for it"),
    N_("The team would read one value and not learn that the answer means the others too."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every answer of several values without a label."""
    for step in subject.pathway.steps.values():
        for answer in step.answers if isinstance(step, Question) else ():
            if len(answer.means) > 1 and not answer.label:
                shown = ", ".join(f"`{value}`" for value in answer.means)
                at = ("steps", step.id, "answers", answer.id)
                message = _("`{answer}` stands for {shown} and has no label").format(
                    answer=answer.id, shown=shown
                )
                advice = _("Add `label:` with words that cover them all.")
                yield subject.problem(CODE, at, message, advice, at_key=True)
