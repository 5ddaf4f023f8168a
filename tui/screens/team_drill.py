"""A drill of a whole team on the screen: one key an event, and a line for what the surgeon says."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.actions import TEAM, KeyAction
from chamberwise.tui.bindings import bindings
from chamberwise.tui.present.parts import GAP, Part, Tone
from chamberwise.tui.rehearsal import Rehearsal
from chamberwise.tui.screens.drill import PLACEHOLDER, DrillScreen
from chamberwise.tui.teaming import NEXT_LINE, PRESSES, TASKS, Team, debriefed
from textual import events

KEYS = N_("a key is an event; Enter to type what the surgeon says")
WORDS = N_("{placeholder}; Esc for the keys")
HOW_TO = N_("One key for each event: {presses}")
ROWS_BESIDE = 15
"""So many rows of the screen are for other things than open tasks."""
FEWEST_TASKS, MOST_TASKS = 3, 10


class TeamDrillScreen(DrillScreen):
    """One drill of a team. Letters are events until Enter opens the line."""

    BINDINGS = bindings(TEAM)
    KEYS: tuple[KeyAction, ...] = TEAM

    def __init__(self, rehearsal: Rehearsal, team: Team, remarks: Sequence[str] = ()) -> None:
        super().__init__(rehearsal, remarks)
        self.team = team
        how_to = _(HOW_TO).format(presses=_(PRESSES))
        self.told += [*team.board(), GAP, Part(how_to, tone=Tone.CALM)]
        self.field.can_focus = False

    def on_mount(self) -> None:
        """Take keys as events at once."""
        super().on_mount()
        self._to_keys()

    def on_key(self, event: events.Key) -> None:
        """Take a letter as an event."""
        said = event.character or ""
        if len(said) == 1 and said.isalpha():
            event.stop()
            self.action_team_key(said)

    def action_read_on(self) -> None:
        """Show the reader's next line."""
        self.action_team_key(NEXT_LINE)

    def action_tasks(self) -> None:
        """Show every task."""
        self.action_team_key(TASKS)

    def action_say(self) -> None:
        """Open the line, or say what stands in it and go back to the keys."""
        if self.rehearsal.is_over:
            return
        if self.rehearsal.is_waiting:
            self.rehearsal.start()
            self._to_keys()
        elif not self.field.has_focus:
            self.field.can_focus = True
            self.field.placeholder = _(WORDS).format(placeholder=_(PLACEHOLDER))
            self.field.focus()
        else:
            super().action_say()
            self._to_keys()

    def action_close(self) -> None:
        """Go back from the line to the keys, else leave; the drill is kept."""
        if self.field.has_focus and not self.rehearsal.is_over:
            self.field.value = ""
            self._to_keys()
        else:
            super().action_close()

    def beside(self) -> list[Part]:
        """Return the tasks that are still open, as many as there is room for."""
        most = max(FEWEST_TASKS, min(MOST_TASKS, self.size.height - ROWS_BESIDE))
        return self.team.still_open(most)

    def debrief(self) -> list[Part]:
        """Return what it came to, what was left open first."""
        return list(debriefed(self.rehearsal))

    def action_team_key(self, key: str) -> None:
        """Take a key as an event, where keys are events now."""
        if self.field.has_focus or self.rehearsal.is_over or self.rehearsal.is_waiting:
            return
        self._say(self.team.hear(key) or [])

    def _to_keys(self) -> None:
        if not self.rehearsal.is_waiting:
            self.field.placeholder = _(KEYS)
        self.field.can_focus = False
        self.set_focus(None)
        if not self.rehearsal.is_waiting and not self.rehearsal.is_over:
            self._show()
