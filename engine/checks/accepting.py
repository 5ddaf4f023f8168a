"""Accepted problems are left out; an acceptance that matches nothing is itself a problem."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity, pointer_text
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Acceptance

CODE = Code(
    "unused-acceptance",
    Severity.WARNING,
    N_("An acceptance that accepts nothing"),
    N_("Left standing, it would hide the next problem that comes up there."),
)

NEVER_ACCEPTED = frozenset({"no-way-out", "trapped", "loop-without-bound", "leads-nowhere"})


def not_accepted(subject: Subject, problems: Sequence[Problem]) -> Iterator[Problem]:
    """Yield the problems nobody accepted, then one for each acceptance that matched nothing."""
    used: set[Acceptance] = set()
    for problem in problems:
        matching = [each for each in subject.pathway.accepted if _covers(each, problem)]
        used.update(matching)
        if not matching:
            yield problem
    for place, acceptance in enumerate(subject.pathway.accepted):
        if acceptance not in used and (acceptance.check in NEVER_ACCEPTED or subject.entries):
            message = _("`{check}` is accepted at `{place}`, and not found there").format(
                check=acceptance.check, place=acceptance.at
            )
            advice = _("Delete the acceptance, or correct its `check` or `at`.")
            if acceptance.check in NEVER_ACCEPTED:
                message = _("`{check}` can never be accepted").format(check=acceptance.check)
                advice = _("Put the pathway right instead.")
            yield subject.problem(CODE, ("accepted", place, "check"), message, advice)


def _covers(acceptance: Acceptance, problem: Problem) -> bool:
    if acceptance.check != problem.code or problem.code in NEVER_ACCEPTED:
        return False
    at = pointer_text(problem.pointer)
    return at == acceptance.at or at.startswith(f"{acceptance.at} / ")
