"""A branch that some walk comes to without knowing what it needs, and with no way for that."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.knowledge.story import story
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.exploration.explored import Explored
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Branch

CODE = Code(
    "branch-cannot-decide",
    Severity.ERROR,
    N_("A branch that cannot decide"),
    N_("The team would stand still here, or go on as if it knew."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every branch with a reachable state it has no way for."""
    told: set[str] = set()
    for found in subject.explorations:
        for state in found.undecided:
            place = found.at_node(state)
            step = subject.library.step(place)
            if place.pathway != subject.pathway.id or place.step in told:
                continue
            if isinstance(step, Branch):
                told.add(place.step)
                yield _problem(subject, found, state, step)


def _problem(subject: Subject, found: Explored, state: int, step: Branch) -> Problem:
    layout, pathway = found.program.layout, subject.pathway.id
    names = dict.fromkeys(name for row in step.rows for name, _values in row.when.terms)
    missing = [
        name for name in names if len(layout.field(pathway, name).values(found.bits[state])) > 1
    ]
    if missing:
        shown = ", ".join(f"`{name}`" for name in missing)
        message = _("`{step}` cannot decide while {shown} is not known").format(
            step=step.id, shown=shown
        )
        advice = _("Ask it first, or say where to go with `not known:`.")
    else:
        message = _("`{step}` has no row for what is known").format(step=step.id)
        advice = _("Add the row that is missing, or `otherwise:`.")
    message += _(" (walk: {walk})").format(walk=story(subject.library, found, state))
    return subject.problem(CODE, ("steps", step.id, "branch"), message, advice)
