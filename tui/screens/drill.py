"""A drill on the screen: what is seen now, what was said, a line to type, and the clock."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.drill.entries import Milliseconds, Mode
from chamberwise.engine.drill.taking import ends_at
from chamberwise.engine.drill.wording.marks import marked_next, unmarked
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.actions import DRILL, DRILL_OVER, KeyAction
from chamberwise.tui.bindings import bindings
from chamberwise.tui.footer import footer, help_parts
from chamberwise.tui.present.drill_pages import clock_text, opening
from chamberwise.tui.present.drill_typing import valid_parts
from chamberwise.tui.present.parts import GAP, Part, Tone
from chamberwise.tui.rehearsal import Rehearsal
from chamberwise.tui.screens.panel import Panel
from chamberwise.tui.widgets.foot import Foot
from chamberwise.tui.widgets.line import TwoEnds
from chamberwise.tui.widgets.prose import Prose
from chamberwise.tui.widgets.scrolling import Scrolling
from textual.app import ComposeResult
from textual.screen import Screen
from textual.widgets import Input

LOOKS_A_SECOND = 4
LEAVE = ("q", "quit")
PLACEHOLDER = N_("what you do, look at or say")
READ = N_("Enter when you have read this; then time goes by")


class DrillScreen(Screen[None]):
    """One drill. Every entry is on disk before this screen shows what it led to."""

    BINDINGS = bindings(DRILL)
    KEYS: tuple[KeyAction, ...] = DRILL

    def __init__(self, rehearsal: Rehearsal, remarks: Sequence[str] = ()) -> None:
        super().__init__()
        self.rehearsal = rehearsal
        self.first_key: Milliseconds | None = None
        self.told = opening(rehearsal.drill, rehearsal.mode)
        self.told += [Part(remark, "! ") for remark in remarks]
        self.is_told_over = False
        self.title_line = TwoEnds(id="title")
        self.card = Prose(id="card")
        self.body = Scrolling(takes_arrows=False, more=_("more below: press Page Down"))
        placeholder = _(READ if rehearsal.is_waiting else PLACEHOLDER)
        self.field = Input(placeholder=placeholder, select_on_focus=False)
        no_way_back = {"back": ""} if rehearsal.mode is Mode.RUN else {}
        self.foot = Foot(footer(self.KEYS, no_way_back))

    def compose(self) -> ComposeResult:
        """Put what was said over what is seen now, and the line to type under both."""
        yield self.title_line
        yield self.body
        yield self.card
        yield self.field
        yield self.foot

    def on_mount(self) -> None:
        """Type at once, and let the clock bring what it brings."""
        self.field.cursor_blink = False
        self.field.focus()
        self.set_interval(1 / LOOKS_A_SECOND, self.look)
        self.body.show(self.told)
        self.tell_time()

    def on_resize(self) -> None:
        """Keep the newest in view at another size."""
        self._show()

    def look(self) -> None:
        """Take what the clock has brought."""
        if not self.rehearsal.is_over:
            self._say(self.rehearsal.tick())
        self.tell_time()

    def tell_time(self) -> None:
        """Show how long the drill has run, and how long is left of it."""
        drill, now = self.rehearsal.drill, self.rehearsal.stopwatch()
        left = max(0, ends_at(drill) - now)
        clock = _("{clock}, {left} left").format(clock=clock_text(now), left=clock_text(left))
        title = _("Drill, seed {seed}, rehearse").format(seed=drill.scenario.seed)
        if self.rehearsal.mode is Mode.RUN:
            title = _("Drill, seed {seed}, run").format(seed=drill.scenario.seed)
        kept = _("NOT KEPT") + "  " if self.rehearsal.lost else ""
        self.title_line.show(f"{kept}{title}", _("over") if self.rehearsal.is_over else clock)

    def on_input_changed(self, event: Input.Changed) -> None:
        """Note when the first key of a line was pressed."""
        if not event.value:
            self.first_key = None
        elif self.first_key is None:
            self.first_key = self.rehearsal.stopwatch()

    def on_input_submitted(self) -> None:
        """Say what was typed."""
        self.action_say()

    def action_say(self) -> None:
        """Say what was typed."""
        self.rehearsal.start()
        self.field.placeholder = _(PLACEHOLDER)
        typed, first_key = self.field.value.strip(), self.first_key
        self.field.value = ""
        if typed.casefold() in LEAVE:
            self.action_close()
        elif typed:
            said = [GAP, Part(typed, f"{clock_text(self.rehearsal.stopwatch())} > ")]
            self._say([*said, *self.rehearsal.hear(typed, first_key)])

    def action_ladder(self) -> None:
        """Go one step up the ladder of help."""
        self._say(self.rehearsal.hear("?"))

    def action_back(self) -> None:
        """Take the last thing back, in a rehearsal."""
        self._say(self.rehearsal.hear("back"))

    def action_mark(self) -> None:
        """Say at the end of the line how sure somebody is; once more, and it says another."""
        self.field.value = marked_next(self.field.value)
        said, mark = unmarked(self.field.value)
        if mark and not said:  # marked before anything is typed: it goes before the mark
            self.field.value = f" {self.field.value}"
        self.field.cursor_position = len(said) if mark else len(self.field.value)

    def action_page_up(self) -> None:
        """Read what was said before."""
        self.body.turn_back()

    def action_page_down(self) -> None:
        """Read on."""
        self.body.turn_page()

    def action_keys(self) -> None:
        """Show every key, and what may be typed."""
        self.app.push_screen(Panel(_("Keys"), [*help_parts(self.KEYS), GAP, *valid_parts()]))

    def action_close(self) -> None:
        """Leave; the drill is kept."""
        self.rehearsal.close()
        if len(self.app.screen_stack) > 2:
            self.dismiss()
        else:
            self.app.exit(0)

    def beside(self) -> list[Part]:
        """Return what stands beside what is seen now."""
        return []

    def debrief(self) -> list[Part]:
        """Return what it came to."""
        return self.rehearsal.debrief()

    def _say(self, parts: Sequence[Part]) -> None:
        if not parts and self.rehearsal.is_over is self.is_told_over:
            return
        self.told += parts
        if self.rehearsal.is_over and not self.is_told_over:
            self.is_told_over = True
            self.field.display = False
            self.foot.show(footer(DRILL_OVER))
            self.card.show([])
            self.body.show(self.debrief())
            self.body.pane.can_focus = True
            self.body.pane.focus()
            return
        self._show()

    def _show(self) -> None:
        if self.is_told_over:
            return
        if self.rehearsal.is_waiting:
            self.body.show(self.told)
            return
        seen = [Part(text, tone=Tone.STRONG) for text in self.rehearsal.last_seen]
        self.card.show([*seen, *self.beside()])
        self.body.show(self.told, from_top=False)
        self.call_after_refresh(self._to_the_end)

    def _to_the_end(self) -> None:
        if not self.is_told_over and len(self.told) > 1:
            self.body.pane.scroll_end(animate=False)
