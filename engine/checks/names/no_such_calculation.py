"""A step that refers to a calculation which does not exist."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.registry import NAMES

CODE = Code(
    "no-such-calculation",
    Severity.ERROR,
    N_("A calculation that does not exist"),
    N_("The team would look for figures that nobody can work."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every calculation named that is none."""
    for step in subject.pathway.steps.values():
        for name in step.work:
            if name not in NAMES:
                message = _("there is no calculation `{name}`").format(name=name)
                otherwise = _("`chamberwise work` lists those there are.")
                advice = did_you_mean(name, NAMES, otherwise)
                yield subject.problem(CODE, ("steps", step.id, "work"), message, advice)
