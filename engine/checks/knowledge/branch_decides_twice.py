"""Two rows of a branch that can be true at once and lead apart."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.step import Branch

CODE = Code(
    "branch-decides-twice",
    Severity.ERROR,
    N_("A branch that decides twice"),
    N_("Which way it goes would hang on the order of the rows, which no reader can see."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every row that can be true together with an earlier one."""
    for step in subject.pathway.steps.values():
        if not isinstance(step, Branch):
            continue
        for (first, row), (second, other) in combinations(enumerate(step.rows), 2):
            if _exclude_each_other(row.when, other.when):
                continue
            at = ("steps", step.id, "branch", second, "when")
            message = _("row {second} can be true together with row {first}").format(
                second=second + 1, first=first + 1
            )
            advice = _("Name in one of the rows a value that the other leaves out.")
            note = subject.note(_("the other row"), ("steps", step.id, "branch", first, "when"))
            yield subject.problem(CODE, at, message, advice, notes=(note,))


def _exclude_each_other(condition: Condition, other: Condition) -> bool:
    others = dict(other.terms)
    return any(
        name in others and not set(values) & set(others[name]) for name, values in condition.terms
    )
