"""The answers of a question cover every value still possible, and "cannot tell" is one of them."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import CANNOT_TELL, Question

CODE = Code(
    "answers-do-not-cover",
    Severity.ERROR,
    N_("What is found has no answer"),
    N_("A team that finds it has to guess, and a guess becomes a decision."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every value without an answer, and for a missing "cannot tell".

    Where names keep walks from being explored, or no arrow leads to the question, nothing is said
    of values: they may be ruled out.
    """
    possible = _possible_where_asked(subject)
    reached = subject.by_arrows if subject.entries else frozenset()
    for step in subject.pathway.steps.values():
        finding = subject.words.findings.get(step.ask) if isinstance(step, Question) else None
        if not isinstance(step, Question) or finding is None:
            continue
        answered = {value for answer in step.answers for value in answer.means}
        every = {value.id for value in finding.values} if step.id in reached else set()
        still = possible.get(step.id, every)
        missing = [
            value.id for value in finding.values if value.id in still and value.id not in answered
        ]
        if missing:
            shown = ", ".join(f"`{value}`" for value in missing)
            message = _("no answer for {shown} of `{finding}`").format(
                shown=shown, finding=finding.id
            )
            advice = _("Add `{first}:` and the step it leads to.").format(first=missing[0])
            yield subject.problem(CODE, ("steps", step.id, "answers"), message, advice)
        if all(answer.id != CANNOT_TELL for answer in step.answers):
            message = _("`{step}` has no answer `{cannot_tell}`").format(
                step=step.id, cannot_tell=CANNOT_TELL
            )
            advice = _("Add `{cannot_tell}:` and the step that is safe when nobody knows.").format(
                cannot_tell=CANNOT_TELL
            )
            yield subject.problem(CODE, ("steps", step.id, "answers"), message, advice)


def _possible_where_asked(subject: Subject) -> dict[str, set[str]]:
    """Return, by question, every value some state there leaves possible; nothing if unexplored."""
    union: dict[str, int] = {}
    for found in subject.sightings:
        for name, seen in found.seen_in(subject.pathway.id):
            union[name] = union.get(name, 0) | seen.possible
    possible: dict[str, set[str]] = {}
    for name, bits in union.items():
        step = subject.pathway.steps[name]
        if isinstance(step, Question):
            possible[name] = set(subject.field(step.ask).values(bits))
    return possible
