"""What line mode prints of a walk: its head, a step, what may be typed."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.exports.record.standing import STANDING
from chamberwise.tui.line.commands import COMMANDS
from chamberwise.tui.present.parts import GAP, Part
from chamberwise.tui.present.step_page import body, head, passed, stacked, warnings
from chamberwise.tui.present.step_view import StepKind, StepView, Where

REPLAYING = "Enter for the next move of the replay, or ? for help:"


def opening(where: Where, remarks: Sequence[str] = ()) -> list[Part]:
    """Return what a walk begins with."""
    return [
        Part(f"{where.title}. Edition {where.edition}.{_marks(where)}"),
        Part(STANDING),
        *(Part(remark) for remark in remarks),
    ]


def _marks(where: Where) -> str:
    return "".join(f" {mark}." for mark in where.marks)


def step(view: StepView) -> list[Part]:
    """Return one step: where it is, the question or action, and all that belongs to it."""
    blocks = ([Part(place_line(view))], passed(view), warnings(view), head(view), body(view))
    return [GAP, *stacked(blocks), GAP]


def place_line(view: StepView) -> str:
    """Return where the step is, in one sentence each: pathway, phase, step, last answer."""
    where = view.where
    phase = f"Phase {where.phase_number} of {where.phases}: {where.phase}."
    back = f" Afterwards back to: {where.back_to}." if where.back_to else ""
    last = f" Last answer: {view.last_answer}." if view.last_answer else ""
    return f"{where.title}.{_marks(where)} {phase} Step {where.step_number}.{back}{last}"


def prompt(view: StepView) -> str:
    """Return the prompt of a step."""
    match view.kind:
        case StepKind.QUESTION:
            return f"Answer 1 to {len(view.answers)}, or ? for help:"
        case StepKind.ACTION:
            return "Enter when done, or ? for help:"
        case StepKind.HANDOVER:
            return "Enter to go over, or ? for help:"
        case _:
            return "Enter to leave, u to go back, or ? for help:"


def valid(view: StepView) -> str:
    """Return what may be typed at a step, as one sentence."""
    letters = ", ".join(command.letter for command in COMMANDS if command.letter != "Enter")
    offered = "; ".join(f"{answer.key} {answer.label}" for answer in view.answers)
    return f"{offered or 'Enter'}; or one of {letters}."


def help_page(view: StepView) -> list[Part]:
    """Return what may be typed, a line each."""
    parts = [Part(f"{answer.label}", f"  {answer.key}  ") for answer in view.answers]
    parts += [
        Part(command.help, f"  {command.letter}  ")
        for command in COMMANDS
        if command.letter != "Enter" or not view.answers
    ]
    return [Part("Type one of these, then Enter:"), *parts, Part(STANDING)]
