"""The conversation of line mode: show a step, read a line, do what it says."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.state import Answered, Done
from chamberwise.exports.record.standing import NO_IDENTITY, STANDING
from chamberwise.tui.identity import LIKE_A_PATIENT, may_name_a_patient
from chamberwise.tui.line import pages
from chamberwise.tui.line.commands import Verb, understood
from chamberwise.tui.line.paper import Paper
from chamberwise.tui.present.board import board
from chamberwise.tui.present.map_page import around
from chamberwise.tui.present.panels import full_board, why
from chamberwise.tui.present.parts import Part
from chamberwise.tui.present.step_view import StepKind, StepView, step_view
from chamberwise.tui.present.trail import trail
from chamberwise.tui.replaying import remarks as replay_remarks
from chamberwise.tui.sitting import Sitting

Reader = Callable[[], str | None]
"""Returns the next line typed, or `None` where there is no more."""


@dataclass
class Conversation:
    """One walk told and answered line by line. `save` writes the record and says where."""

    sitting: Sitting
    paper: Paper
    read: Reader
    go_on_with: str
    save: Callable[[], str]
    remarks: Sequence[str] = ()
    _warned: bool = False
    _verbs: dict[Verb, Callable[[str], None]] = field(init=False)

    def __post_init__(self) -> None:
        """Bind each verb to what does it."""
        self._verbs = {
            Verb.BACK: self._back,
            Verb.FORWARD: self._forward,
            Verb.WHY: lambda _words: self.paper.parts(why(self.view)),
            Verb.KNOWN: lambda _words: self.paper.parts(full_board(board(self.sitting.walk))),
            Verb.NOTE: self._note,
            Verb.MAP: lambda _words: self.paper.parts(around(self.sitting.walk)),
            Verb.RECORD: lambda _words: self.paper.say(self.save()),
            Verb.REPEAT: lambda _words: self.show(),
            Verb.HELP: lambda _words: self.paper.parts(pages.help_page(self.view)),
        }

    @property
    def view(self) -> StepView:
        """The step stood on."""
        walk = self.sitting.walk
        way = trail(walk)
        return step_view(walk, self.sitting.today, way[-1].answer if way else "", self.sitting.case)

    def open(self) -> None:
        """Print the head of the walk and its first step."""
        self.paper.parts(pages.opening(self.view.where, self.remarks))
        self.show()

    def show(self) -> None:
        """Print the step stood on."""
        if self.sitting.lost and not self._warned:
            self.paper.say(self.sitting.lost)
            self._warned = True
        self.paper.parts(pages.step(self.view))
        walk = self.sitting.walk
        for remark in replay_remarks(walk, self.sitting.broken, "Enter"):
            self.paper.parts([Part(remark, "! ")])

    def talk(self) -> None:
        """Go on until the walk is left or there is nothing more to read."""
        self.open()
        while True:
            self.paper.prompt(self._prompt())
            typed = self.read()
            if typed is None:
                self.paper.say()
                break
            if not self._take(typed):
                break
        self.leave()

    def _prompt(self) -> str:
        return _(pages.REPLAYING) if self.sitting.walk.ahead else pages.prompt(self.view)

    def leave(self) -> None:
        """Say how to go on later, and what this was for."""
        walk = self.sitting.walk
        if walk.is_over:
            self.paper.say(_("The walk is over."))
        elif self.sitting.is_kept:
            self.paper.say(_("The walk is kept. To go on with it:"))
            self.paper.verbatim(self.go_on_with)
        else:
            self.paper.say(self.sitting.how_left)
        self.paper.say(_(STANDING))

    def _take(self, typed: str) -> bool:
        """Do what a line says; whether the conversation goes on."""
        answer = self.view.answer(typed)
        if answer is not None:
            self.sitting.make(Answered(answer.id))
            self.show()
            return True
        verb, words = understood(typed)
        if verb is Verb.QUIT:
            return False
        if verb is Verb.DONE and self.sitting.walk.ahead:
            verb = Verb.FORWARD
        if verb is Verb.DONE:
            return self._done()
        if verb is None:
            self.paper.say(
                _("Not understood. Valid here: {valid}").format(valid=pages.valid(self.view))
            )
            return True
        self._verbs[verb](words)
        return True

    def _done(self) -> bool:
        match self.view.kind:
            case StepKind.OUTCOME | StepKind.STUCK:
                return False
            case StepKind.QUESTION:
                self.paper.say(
                    _("A question waits for an answer: {valid}").format(
                        valid=pages.valid(self.view)
                    )
                )
            case _:
                self.sitting.make(Done())
                self.show()
        return True

    def _back(self, _words: str) -> None:
        if not self.sitting.walk.legs:
            self.paper.say(_("This is the first step; there is nothing to take back."))
            return
        self.sitting.undo()
        self.show()

    def _forward(self, _words: str) -> None:
        if not self.sitting.walk.can_redo:
            self.paper.say(_("Nothing was taken back."))
            return
        self.sitting.redo()
        self.show()

    def _note(self, words: str) -> None:
        if not words:
            self.paper.prompt(
                _("Note. {no_identity} Empty for none:").format(no_identity=_(NO_IDENTITY))
            )
            words = (self.read() or "").strip()
        if not words or not self._may_keep(words):
            self.paper.say(_("No note was kept."))
            return
        self.sitting.note(words)
        self.paper.say(_("Noted: {words}").format(words=words))
        self.paper.say(_(NO_IDENTITY))

    def _may_keep(self, words: str) -> bool:
        if not may_name_a_patient(words):
            return True
        self.paper.prompt(" ".join([_(LIKE_A_PATIENT), _("Keep it? y/n:")]))
        return (self.read() or "").strip().casefold() in ("y", "yes")
