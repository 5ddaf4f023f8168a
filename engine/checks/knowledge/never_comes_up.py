"""A step that arrows lead to and no walk comes to, or a question that is known every time."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Question

CODE = Code(
    "never-comes-up",
    Severity.WARNING,
    N_("A step that never comes up"),
    N_("Either it can go, or an effect is missing and the team is never asked again."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every step no walk comes to, and every question never asked."""
    if not subject.sightings or any(found.stopped for found in subject.sightings):
        return
    reached, asked = _reached(subject)
    graph_reached = subject.by_arrows
    for name, step in subject.pathway.steps.items():
        at = ("steps", name)
        if name not in reached and name in graph_reached:
            message = _(
                "arrows lead to `{name}`, but what is known never lets a walk come to it"
            ).format(name=name)
            advice = _("Check the conditions and effects before it, or delete it.")
            yield subject.problem(CODE, at, message, advice, at_key=True)
        elif isinstance(step, Question) and name in reached and name not in asked:
            message = _("`{finding}` is already known every time a walk comes to `{name}`").format(
                finding=step.ask, name=name
            )
            advice = _("Let the action before it make it stale, or delete the question.")
            yield subject.problem(CODE, (*at, "ask"), message, advice)


def _reached(subject: Subject) -> tuple[set[str], set[str]]:
    reached: set[str] = set()
    asked: set[str] = set()
    for found in subject.sightings:
        for step, seen in found.seen_in(subject.pathway.id):
            reached.add(step)
            if seen.asked:
                asked.add(step)
    return reached, asked
