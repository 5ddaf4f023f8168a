"""The arrows of a step: where each leads, and the step with arrows that lead elsewhere."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TypeAlias

from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.step import Action, Branch, Handover, Question, Step, StepId

Turn: TypeAlias = Callable[[str, StepId], StepId]
"""From the label of an arrow and where it leads to where it is to lead."""

AFTER_THAT = "after that"


def rewired(step: Step, turn: Turn) -> Step:
    """Return a step whose arrows lead where `turn` says; the step itself if none is turned."""
    made = _of_kind(step, turn)
    if made.bound:
        made = replace(
            made, bound=replace(made.bound, after_that=turn(AFTER_THAT, made.bound.after_that))
        )
    return made


def _of_kind(step: Step, turn: Turn) -> Step:
    match step:
        case Question():
            answers = tuple(replace(each, go_to=turn(each.id, each.go_to)) for each in step.answers)
            return replace(step, answers=answers)
        case Action():
            return replace(step, go_to=turn("go to", step.go_to))
        case Branch():
            return _branch(step, turn)
        case Handover():
            back = tuple((outcome, turn(outcome, to)) for outcome, to in step.on_return)
            return replace(step, on_return=back)
    return step


def _branch(step: Branch, turn: Turn) -> Branch:
    def optional(label: str, target: StepId | None) -> StepId | None:
        return None if target is None else turn(label, target)

    return replace(
        step,
        rows=tuple(replace(row, go_to=turn(told(row.when), row.go_to)) for row in step.rows),
        otherwise=optional("otherwise", step.otherwise),
        not_known=optional("not known", step.not_known),
    )


def arrows(step: Step) -> tuple[tuple[str, StepId], ...]:
    """Return every arrow out of a step: its label and where it leads, the bound's exit last."""
    found: list[tuple[str, StepId]] = []

    def look(label: str, target: StepId) -> StepId:
        found.append((label, target))
        return target

    rewired(step, look)
    return tuple(found)


def turned(step: Step, label: str, target: StepId) -> Step:
    """Return a step of which one arrow leads elsewhere."""
    return rewired(step, lambda each, to: target if each == label else to)


def onward(step: Step) -> tuple[StepId, ...]:
    """Return the steps that the arrows of a step lead to, each once, without the bound's exit."""
    return tuple(dict.fromkeys(to for label, to in arrows(step) if label != AFTER_THAT))


def told(condition: Condition) -> str:
    """Return a condition as text, e.g. `lens=in-bag & lens-hold=steady|sinking`."""
    return " & ".join(f"{name}={'|'.join(values)}" for name, values in condition.terms)
