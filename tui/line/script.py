"""Scripted walks: one answer a line, told as they go, stopped at the first that does not fit."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from chamberwise.engine.diagnostics.nearest import nearest
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.state import Answered, Done
from chamberwise.tui.line import pages
from chamberwise.tui.line.conversation import Conversation
from chamberwise.tui.present.step_view import StepKind, StepView

DONE = "done"


class ScriptError(RuntimeError):
    """An answer is not offered; `args[0]` says which line and what is."""


@dataclass(frozen=True, slots=True)
class ScriptLine:
    """One answer and the line it stands on."""

    number: int
    text: str


def answers_in(lines: Iterable[str]) -> Iterator[ScriptLine]:
    """Yield the answers of a script; empty lines and lines that begin with # are skipped."""
    for number, line in enumerate(lines, start=1):
        text = line.strip()
        if text and not text.startswith("#"):
            yield ScriptLine(number, text)


def follow(conversation: Conversation, lines: Iterable[str], name: str) -> None:
    """Make every move of a script. Raises `ScriptError`; what came before it stands."""
    conversation.open()
    for line in answers_in(lines):
        view = conversation.view
        move = _move(view, line, name)
        said = move.answer if isinstance(move, Answered) else DONE
        conversation.paper.say(f"{pages.asked(view)}: {said}")
        conversation.sitting.make(move)
        conversation.show()
    if not conversation.sitting.walk.is_over:
        conversation.paper.say(_("The answers end here."))


def _move(view: StepView, line: ScriptLine, name: str) -> Answered | Done:
    if view.kind is StepKind.QUESTION:
        answer = view.answer(line.text)
        if answer is not None:
            return Answered(answer.id)
    elif view.kind in (StepKind.ACTION, StepKind.HANDOVER) and line.text.casefold() == DONE:
        return Done()
    raise ScriptError(f"{name}:{line.number}: {_complaint(view, line.text)}")


def _complaint(view: StepView, typed: str) -> str:
    if view.kind is StepKind.QUESTION:
        names = [answer.id for answer in view.answers]
        found = nearest(typed, names)
        offered = ", ".join(f"{answer.key} {answer.id}" for answer in view.answers)
        told = [_("`{typed}` is not offered at “{asked}”.").format(typed=typed, asked=view.text)]
        if found:
            told.append(_("Did you mean `{name}`?").format(name=found))
        return " ".join([*told, _("Offered: {offered}.").format(offered=offered)])
    if view.kind in (StepKind.ACTION, StepKind.HANDOVER):
        return _("`{typed}` stands at an action, where only `{done}` goes on.").format(
            typed=typed, done=DONE
        )
    return _("`{typed}` is left over: the walk is already at its end.").format(typed=typed)
