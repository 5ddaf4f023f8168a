"""A handover to a pathway, or back from an outcome, that does not exist."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.model.step import Handover, Outcome

CODE = Code(
    "handover-to-nothing",
    Severity.ERROR,
    "A handover to a pathway or from an outcome that does not exist",
    "The team would be sent to a page that is not there.",
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every handover that names no pathway, or no outcome of it."""
    pathways = subject.library.pathways
    for step in subject.pathway.steps.values():
        if not isinstance(step, Handover):
            continue
        at = ("steps", step.id)
        if step.to not in pathways:
            message = f"there is no pathway `{step.to}` in the library"
            advice = did_you_mean(step.to, pathways, "Write its file, or end in an outcome here.")
            yield subject.problem(CODE, (*at, "hand over to"), message, advice)
            continue
        outcomes = [
            each.id for each in pathways[step.to].steps.values() if isinstance(each, Outcome)
        ]
        for name, _ in step.on_return:
            if name not in outcomes:
                message = f"`{step.to}` has no outcome `{name}`"
                listed = ", ".join(f"`{each}`" for each in outcomes)
                advice = did_you_mean(name, outcomes, f"Its outcomes are {listed}.")
                where = (*at, "on return", name)
                yield subject.problem(CODE, where, message, advice, at_key=True)
