"""What line mode prints of a walk: its head, a step, what may be typed."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.line.commands import COMMANDS
from chamberwise.tui.present.parts import GAP, Part
from chamberwise.tui.present.standing import standing
from chamberwise.tui.present.step_page import body, head, passed, stacked, warnings
from chamberwise.tui.present.step_view import StepKind, StepView, Where

REPLAYING = N_("Enter for the next move of the replay, or ? for help:")


def opening(where: Where, remarks: Sequence[str] = ()) -> list[Part]:
    """Return what a walk begins with."""
    edition = _("Edition {edition}.").format(edition=where.edition)
    return [
        Part(" ".join([f"{where.title}.", edition, *_marks(where)])),
        Part(standing()),
        *(Part(remark) for remark in remarks),
    ]


def _marks(where: Where) -> list[str]:
    return [f"{mark}." for mark in where.marks]


def step(view: StepView) -> list[Part]:
    """Return one step: where it is, the question or action, and all that belongs to it."""
    blocks = ([Part(place_line(view))], passed(view), warnings(view), head(view), body(view))
    return [GAP, *stacked(blocks), GAP]


def place_line(view: StepView) -> str:
    """Return where the step is, in one sentence each: pathway, phase, step, last answer."""
    where = view.where
    phase = _("Phase {number} of {phases}: {phase}.").format(
        number=where.phase_number, phases=where.phases, phase=where.phase
    )
    told = [f"{where.title}.", *_marks(where), phase]
    told.append(_("Step {number}.").format(number=where.step_number))
    if where.back_to:
        told.append(_("Afterwards back to: {pathway}.").format(pathway=where.back_to))
    if view.last_answer:
        told.append(_("Last answer: {answer}.").format(answer=view.last_answer))
    return " ".join(told)


def asked(view: StepView) -> str:
    """Return what a step waits for, as a script is told it."""
    match view.kind:
        case StepKind.QUESTION:
            return _("Answer 1 to {count}").format(count=len(view.answers))
        case StepKind.ACTION:
            return _("Enter when done")
        case StepKind.HANDOVER:
            return _("Enter to go over")
        case _end:
            return _("Enter to leave")


def prompt(view: StepView) -> str:
    """Return the prompt of a step."""
    match view.kind:
        case StepKind.QUESTION:
            return _("Answer 1 to {count}, or ? for help:").format(count=len(view.answers))
        case StepKind.ACTION:
            return _("Enter when done, or ? for help:")
        case StepKind.HANDOVER:
            return _("Enter to go over, or ? for help:")
        case _:
            return _("Enter to leave, u to go back, or ? for help:")


def valid(view: StepView) -> str:
    """Return what may be typed at a step, as one sentence."""
    letters = ", ".join(command.letter for command in COMMANDS if command.letter != "Enter")
    offered = "; ".join(f"{answer.key} {answer.label}" for answer in view.answers)
    return _("{offered}; or one of {letters}.").format(offered=offered or "Enter", letters=letters)


def help_page(view: StepView) -> list[Part]:
    """Return what may be typed, a line each."""
    parts = [Part(f"{answer.label}", f"  {answer.key}  ") for answer in view.answers]
    parts += [
        Part(_(command.help), f"  {command.letter}  ")
        for command in COMMANDS
        if command.letter != "Enter" or not view.answers
    ]
    return [Part(_("Type one of these, then Enter:")), *parts, Part(standing())]
