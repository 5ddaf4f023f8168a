"""A branch on a finding that nobody could know yet, on any walk."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Branch

CODE = Code(
    "used-before-known",
    Severity.ERROR,
    N_("A finding used before anyone could know it"),
    N_("The step decides on ignorance every time, whatever the eye shows."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every finding a branch names that is unknown in every state there."""
    if any(found.stopped for found in subject.sightings):
        return
    ever_known = _ever_known(subject)
    for step in subject.pathway.steps.values():
        if not isinstance(step, Branch) or step.id not in ever_known:
            continue
        told: set[str] = set()
        for row_at, row in enumerate(step.rows):
            for name, _values in row.when.terms:
                every = subject.field(name).every
                if name not in told and not ever_known[step.id] & every:
                    told.add(name)
                    at = ("steps", step.id, "branch", row_at, "when", name)
                    message = _("nobody can know `{name}` when a walk comes to `{step}`").format(
                        name=name, step=step.id
                    )
                    advice = _("Ask `{name}` before, or let an action make it known.").format(
                        name=name
                    )
                    yield subject.problem(CODE, at, message, advice, at_key=True)


def _ever_known(subject: Subject) -> dict[str, int]:
    """Return, by step, the bits of values that some state there rules out."""
    ruled_out: dict[str, int] = {}
    for found in subject.sightings:
        for step, seen in found.seen_in(subject.pathway.id):
            ruled_out[step] = ruled_out.get(step, 0) | seen.ruled_out
    return ruled_out
