"""The screen program: which screen comes first, how it looks, and how it is left."""

from __future__ import annotations

import asyncio
from collections.abc import Sequence
from contextlib import suppress
from signal import SIGTERM
from typing import TYPE_CHECKING

from chamberwise.tui.screens.library import LibraryScreen
from chamberwise.tui.screens.walk import WalkScreen
from chamberwise.tui.setting import Setting
from chamberwise.tui.sitting import Sitting
from chamberwise.tui.widgets.colourless import Colourless
from textual.app import App
from textual.filter import LineFilter

if TYPE_CHECKING:
    from chamberwise.tui.drafting import Draft
    from chamberwise.tui.rehearsal import Rehearsal

INTERRUPTED = 130

OWN_PALETTE = "ansi-dark"
"""The theme that leaves ground and letters to the user's terminal, light or dark."""


class WalkProgram(App[int]):
    """Opens at a walk, a drill or a draft where one is given, else at the library."""

    CSS_PATH = "styles/program.tcss"
    ENABLE_COMMAND_PALETTE = False
    TITLE = "Chamberwise"

    def __init__(
        self,
        setting: Setting,
        sitting: Sitting | None = None,
        remarks: Sequence[str] = (),
        record_to: str = "",
        rehearsal: Rehearsal | None = None,
        draft: Draft | None = None,
    ) -> None:
        super().__init__(ansi_color=True)
        self.setting = setting
        self.sitting = sitting
        self.remarks = remarks
        self.record_to = record_to
        self.rehearsal = rehearsal
        self.draft = draft
        self.animation_level = "none"
        self.colourless = [] if setting.colour else [Colourless()]
        self.theme = OWN_PALETTE

    def get_line_filters(self) -> Sequence[LineFilter]:
        """Take every colour out last, where none is wanted."""
        return [*super().get_line_filters(), *self.colourless]

    def on_mount(self) -> None:
        """Open the first screen, and leave a clean terminal when told to end."""
        with suppress(NotImplementedError):
            asyncio.get_running_loop().add_signal_handler(SIGTERM, self.action_interrupt)
        if self.sitting is not None:
            self.push_screen(WalkScreen(self.sitting, self.remarks, self.record_to))
        elif self.rehearsal is not None:
            from chamberwise.tui.screens.drilling import drill_screen

            self.push_screen(drill_screen(self.rehearsal, self.remarks))
        elif self.draft is not None:
            from chamberwise.tui.screens.draft import DraftScreen

            self.push_screen(DraftScreen(self.setting, self.draft))
        else:
            self.push_screen(LibraryScreen(self.setting))

    def action_leave(self) -> None:
        """Leave; every walk is on disk already."""
        self.exit(0)

    def action_interrupt(self) -> None:
        """Leave at once."""
        self.exit(INTERRUPTED)
