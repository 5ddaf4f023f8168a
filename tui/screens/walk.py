"""The walk: one question or action, large, and everything it needs around it."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.language.texts import N_, pgettext
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.state import Answered, Done
from chamberwise.tui.actions import WALK
from chamberwise.tui.bindings import bindings
from chamberwise.tui.bounce import BounceGuard
from chamberwise.tui.footer import footer
from chamberwise.tui.present.arrange import SIDE_FROM, SIDE_WIDTH, WIDEST, arrange
from chamberwise.tui.present.board import board
from chamberwise.tui.present.clock import clocks
from chamberwise.tui.present.panels import full_board, side_board, strip, why
from chamberwise.tui.present.parts import Part, Tone, laid_out
from chamberwise.tui.present.standing import standing
from chamberwise.tui.present.step_view import StepKind, StepView, Where, step_view
from chamberwise.tui.present.trail import trail
from chamberwise.tui.replaying import remarks as replay_remarks
from chamberwise.tui.screens.help import help_panel
from chamberwise.tui.screens.map import MapScreen
from chamberwise.tui.screens.note import NoteScreen
from chamberwise.tui.screens.panel import Panel
from chamberwise.tui.screens.record import RecordScreen
from chamberwise.tui.sitting import Sitting
from chamberwise.tui.widgets.foot import Foot
from chamberwise.tui.widgets.line import TwoEnds
from chamberwise.tui.widgets.prose import Prose
from chamberwise.tui.widgets.scrolling import Scrolling
from textual import events
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.screen import Screen

TURNS = {
    StepKind.QUESTION: N_("more below: Enter turns the page"),
    StepKind.ACTION: N_("more below: Enter turns the page, then means done"),
    StepKind.HANDOVER: N_("more below: Enter turns the page, then goes over"),
}
LEAST_FOR_KEYS = 16
"""In a window with fewer rows the keys make way for the question; `?` still lists them."""


class WalkScreen(Screen[None]):
    """One walk. Every move is on disk before this screen shows where it led."""

    BINDINGS = bindings(WALK)

    def __init__(self, sitting: Sitting, remarks: Sequence[str] = (), record_to: str = "") -> None:
        super().__init__()
        self.sitting = sitting
        self.remarks = list(remarks)
        self.record_to = record_to
        self.guard = BounceGuard()
        self.warned = False
        self.replied = False
        self.view = self._view()
        self.title_line = TwoEnds(id="title")
        self.place_line = TwoEnds(id="place")
        self.card = Prose(id="card")
        self.body = Scrolling(id="body")
        self.side = Prose(id="side")
        self.strip = TwoEnds(id="strip")
        self.foot = Foot("")

    def compose(self) -> ComposeResult:
        """Put the card over the body, the board beside or under them, the keys at the foot."""
        yield self.title_line
        yield self.place_line
        with Horizontal(id="middle"):
            with Vertical(id="main"):
                yield self.card
                yield self.body
            yield self.side
        yield self.strip
        yield self.foot

    def on_mount(self) -> None:
        """Keep the clocks going."""
        self.set_interval(1, self.tell_time)

    def on_resize(self) -> None:
        """Lay the step out for the size there is."""
        self.tell()

    def _view(self) -> StepView:
        walk = self.sitting.walk
        way = trail(walk)
        return step_view(walk, self.sitting.today, way[-1].answer if way else "", self.sitting.case)

    def tell(self, *, from_top: bool = True) -> None:
        """Show the step stood on."""
        self.view, rows = self._view(), board(self.sitting.walk)
        wide = self.size.width >= SIDE_FROM
        self.side.display = wide
        self.strip.display = not wide
        self.foot.keys.display = self.size.height >= LEAST_FOR_KEYS
        self.foot.show(_keys(self.view, self.size.width - 2))
        width = min(WIDEST, self.size.width - (SIDE_WIDTH if wide else 0) - 2)
        said = [*replay_remarks(self.sitting.walk, self.sitting.broken, "Enter"), *self.remarks]
        told = [Part(remark, "! ", Tone.STRONG, Tone.STRONG) for remark in said]
        found = arrange(self.view, width, self._room(self.view, wide) - len(laid_out(told, width)))
        self.card.show([*told, *found.card])
        self.body.show(found.body, from_top=from_top)
        self.body.more.display = not found.fits
        self.body.say_how(_(TURNS.get(self.view.kind, TURNS[StepKind.QUESTION])))
        self.side.show(side_board(rows, SIDE_WIDTH - 4, self._room(self.view, wide)))
        self.strip.show(strip(rows), "")
        self.tell_time()

    def _room(self, view: StepView, wide: bool) -> int:
        width = self.size.width - 2
        keys = [Part(_keys(view, width))] if self.foot.keys.display else []
        foot = laid_out([Part(standing()), *keys], width)
        return self.size.height - 2 - len(foot) - (0 if wide else 1)

    def tell_time(self) -> None:
        """Show how long the walk and the step have taken."""
        where = self.view.where
        total, step = clocks(self.sitting.walk, self.sitting.clock())
        not_kept = (_("NOT KEPT"),) if self.sitting.lost else ()
        not_kept = (_("REPLAY"),) if self.sitting.walk.replay else not_kept
        marks = "".join(f"{mark}  " for mark in (*where.marks, *not_kept))
        self.title_line.show(
            marks
            + _("{title}, edition {edition}").format(title=where.title, edition=where.edition),
            total,
        )
        self.place_line.show(_place(where), step)

    def on_key(self, event: events.Key) -> None:
        """Take back the reply to the last key, and reply to one that does nothing here."""
        if self.replied:
            self.remarks, self.replied = [], False
            self.tell(from_top=False)
        if event.key not in self.active_bindings:
            named = event.character if event.is_printable and event.character else event.key
            self._say(
                _("{key} is no key here; ? lists them").format(key=named.strip() or event.key)
            )

    def _moved(self) -> None:
        self.remarks, self.replied = [], False
        if self.sitting.lost and not self.warned:
            self.remarks, self.warned = [self.sitting.lost], True
        self.tell()

    def action_answer(self, number: int) -> None:
        """Give the answer with that number."""
        answer = next((each for each in self.view.answers if each.key == number), None)
        if answer is None:
            self._hint()
        elif self.guard.lets_pass(str(number), self.sitting.clock()):
            self.sitting.make(Answered(answer.id))
            self._moved()

    def on_prose_picked(self, event: Prose.Picked) -> None:
        """Give the answer that was clicked."""
        answer = self.view.answer(event.answer)
        if answer is not None:
            self.action_answer(answer.key)

    def action_done(self) -> None:
        """Turn the page while there is more below; then do it; at the end, show the record."""
        kind = self.view.kind
        if not self.body.laid_out:
            return
        if self.body.has_more:
            if self.guard.lets_pass("enter", self.sitting.clock()):
                self.body.turn_page()
        elif kind is StepKind.QUESTION:
            if self.sitting.walk.ahead:
                self._redone("enter")
            else:
                self._hint()
        elif kind in (StepKind.OUTCOME, StepKind.STUCK):
            if self.guard.lets_pass("enter", self.sitting.clock()):
                self.action_record()
        elif self.guard.lets_pass("enter", self.sitting.clock()):
            self.sitting.make(Done())
            self._moved()

    def _hint(self) -> None:
        answers = len(self.view.answers)
        if answers:
            self._say(_("Press 1 to {count} to answer.").format(count=answers))
        elif self.sitting.walk.is_over:
            self._say(_("This walk is at its end. Press Enter for the record."))
        else:
            self._say(_("Press Enter when it is done."))

    def _say(self, remark: str) -> None:
        self.remarks, self.replied = [remark], True
        self.tell(from_top=False)

    def action_undo(self) -> None:
        """Take the last step back."""
        if not self.sitting.walk.legs:
            self._say(_("This is the first step; there is nothing to take back."))
        elif self.guard.lets_pass("u", self.sitting.clock()):
            self.sitting.undo()
            self._moved()

    def action_redo(self) -> None:
        """Make the step taken back again."""
        if not self.sitting.walk.can_redo:
            self._say(_("Nothing was taken back."))
        else:
            self._redone("y")

    def _redone(self, key: str) -> None:
        if self.guard.lets_pass(key, self.sitting.clock()):
            self.sitting.redo()
            self._moved()

    def action_why(self) -> None:
        """Show why this step is there."""
        self.app.push_screen(Panel(self.view.where.titled(_("Why and sources")), why(self.view)))

    def action_known(self) -> None:
        """Show the whole board."""
        title = self.view.where.titled(_("The board of findings"))
        self.app.push_screen(Panel(title, full_board(board(self.sitting.walk))))

    def action_note(self) -> None:
        """Ask for a note."""
        self.app.push_screen(
            NoteScreen(self.view.where.titled(_("A note in this walk"))), self._noted
        )

    def _noted(self, text: str | None) -> None:
        if text and text.strip():
            self.sitting.note(text)
            self.remarks = [_("Noted: {words}").format(words=text.strip())]
        self.tell()

    def action_map(self) -> None:
        """Show the steps around this one."""
        self.app.push_screen(
            MapScreen(self.sitting.walk, self.view.where.titled(pgettext("of a walk", "Map")))
        )

    def action_record(self) -> None:
        """Show the record so far."""
        self.app.push_screen(
            RecordScreen(self.sitting, self.record_to, self.view.where.titled(_("Record")))
        )

    def action_help(self) -> None:
        """Show every key."""
        self.app.push_screen(help_panel(WALK, of_a_walk=True))

    def action_library(self) -> None:
        """Go back to the library, where the walk was opened from it."""
        if len(self.app.screen_stack) > 2:
            self.sitting.close()
            self.dismiss()
        else:
            self._say(_("This walk was not opened from the library; q leaves it."))


def _place(where: Where) -> str:
    told = _("Step {step}. Phase {number} of {phases}: {phase}")
    if where.back_to:
        told = _("Step {step}. Phase {number} of {phases}: {phase}, back to: {back_to}")
    return told.format(
        step=where.step_number,
        number=where.phase_number,
        phases=where.phases,
        phase=where.phase,
        back_to=where.back_to,
    )


def _keys(view: StepView, width: int) -> str:
    answers = len(view.answers)
    shown = {"answer": f"1-{answers}" if answers else "", "done": "" if answers else "Enter"}
    if view.kind in (StepKind.OUTCOME, StepKind.STUCK):
        shown = {"answer": "", "done": ""}
    return footer(WALK, shown, width)
