"""Handovers that lead, over other pathways, back into the pathway they left."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Handover

CODE = Code(
    "handover-ring",
    Severity.ERROR,
    N_("Handovers that go round"),
    N_("A team could be sent round between pathways without end, and no bound would stop it."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every handover from which handovers lead back to this pathway."""
    for step in subject.pathway.steps.values():
        if not isinstance(step, Handover):
            continue
        ring = _way_back(subject, step.to, subject.pathway.id)
        if ring:
            shown = " -> ".join(f"`{name}`" for name in (subject.pathway.id, *ring))
            message = _("handovers go round: {shown}").format(shown=shown)
            advice = _("Let the other pathway end in an outcome, and go on from it in `on return`.")
            where = ("steps", step.id, "hand over to")
            yield subject.problem(CODE, where, message, advice)


def _way_back(subject: Subject, start: str, goal: str) -> tuple[str, ...] | None:
    """Return the shortest chain of handovers from one pathway to another, both included."""
    chains: list[tuple[str, ...]] = [(start,)]
    met = {start}
    for chain in chains:
        if chain[-1] == goal:
            return chain
        there = subject.library.pathways.get(chain[-1])
        for step in there.steps.values() if there else ():
            if isinstance(step, Handover) and step.to not in met:
                met.add(step.to)
                chains.append((*chain, step.to))
    return None
