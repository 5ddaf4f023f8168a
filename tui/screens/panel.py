"""A page to read and leave again."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.tui.actions import PANEL, KeyAction
from chamberwise.tui.bindings import bindings
from chamberwise.tui.footer import footer
from chamberwise.tui.present.parts import Part
from chamberwise.tui.widgets.foot import Foot
from chamberwise.tui.widgets.line import TwoEnds
from chamberwise.tui.widgets.scrolling import Scrolling
from textual.app import ComposeResult
from textual.screen import Screen


class Panel(Screen[None]):
    """Shows parts under a title until it is closed."""

    BINDINGS = bindings(PANEL)
    KEYS: tuple[KeyAction, ...] = PANEL

    def __init__(self, title: str, parts: Sequence[Part]) -> None:
        super().__init__()
        self.title_line = TwoEnds(id="title")
        self.title_line.ends = (title, "")
        self.page = Scrolling(parts)

    def compose(self) -> ComposeResult:
        """Put the title over the page and the keys under it."""
        yield self.title_line
        yield self.page
        yield Foot(footer(self.KEYS))

    def on_mount(self) -> None:
        """Let the arrow keys scroll at once."""
        self.page.pane.focus()

    def action_close(self) -> None:
        """Go back."""
        self.dismiss()
