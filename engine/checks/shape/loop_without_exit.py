"""A bound whose exit leads straight back into the loop it should end."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.graph.ends import ends

CODE = Code(
    "loop-without-exit",
    Severity.ERROR,
    "A bound whose exit does not leave the loop",
    "When the bound is reached the team must stop; an exit back into the loop is none.",
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every bound whose exit cannot end without passing the bounded step."""
    from chamberwise.engine.graph.dominance import WaysOut

    bounded = [step for step in subject.pathway.steps.values() if step.bound]
    if not bounded:
        return
    ways_out = WaysOut(subject.graph, ends(subject.library, subject.pathway))
    for step in bounded:
        exit_step = step.bound.after_that if step.bound else ""
        if exit_step not in subject.graph or not ways_out.exist(exit_step):
            continue
        if ways_out.all_pass(exit_step, step.id):
            message = f"`after that` of `{step.id}` leads back to it and never to an end"
            advice = "Lead it to a step that closes, refers or hands over."
            yield subject.problem(CODE, ("steps", step.id, "after that"), message, advice)
