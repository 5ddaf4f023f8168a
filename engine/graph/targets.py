"""Where each step leads, and by which key of the file."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Branch, Handover, Question, Step, StepId


@dataclass(frozen=True, slots=True)
class Target:
    """One arrow: the step it leads to, where the file says so, and what is on the arrow."""

    step: StepId
    pointer: Pointer
    label: str = ""


def targets(step: Step) -> Iterator[Target]:
    """Yield every arrow out of a step in document order, the exit of its bound last."""
    at: Pointer = ("steps", step.id)
    if isinstance(step, Question):
        for answer in step.answers:
            yield Target(answer.go_to, (*at, "answers", answer.id, "go to"), answer.id)
    elif isinstance(step, Action):
        yield Target(step.go_to, (*at, "go to"))
    elif isinstance(step, Branch):
        yield from _of_branch(step, at)
    elif isinstance(step, Handover):
        for outcome, back in step.on_return:
            yield Target(back, (*at, "on return", outcome), outcome)
    if step.bound:
        yield Target(step.bound.after_that, (*at, "after that"), "after that")


def _of_branch(branch: Branch, at: Pointer) -> Iterator[Target]:
    for place, row in enumerate(branch.rows):
        yield Target(row.go_to, (*at, "branch", place, "go to"), f"row {place + 1}")
    if branch.otherwise is not None:
        yield Target(branch.otherwise, (*at, "otherwise"), "otherwise")
    if branch.not_known is not None:
        yield Target(branch.not_known, (*at, "not known"), "not known")


def all_targets(pathway: Pathway) -> Iterator[tuple[Step, Target]]:
    """Yield every arrow of a pathway with the step it leaves."""
    for step in pathway.steps.values():
        for target in targets(step):
            yield step, target
