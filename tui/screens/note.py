"""Writing a note."""

from __future__ import annotations

from chamberwise.exports.record.standing import NO_IDENTITY
from chamberwise.tui.actions import NOTE, footer
from chamberwise.tui.bindings import bindings
from chamberwise.tui.present.parts import Part
from chamberwise.tui.widgets.foot import Foot
from chamberwise.tui.widgets.line import TwoEnds
from chamberwise.tui.widgets.prose import Prose
from textual.app import ComposeResult
from textual.screen import Screen
from textual.widgets import Input


class NoteScreen(Screen[str | None]):
    """Asks for one line of text; hands back nothing where none is wanted."""

    BINDINGS = bindings(NOTE)

    def __init__(self, title: str) -> None:
        super().__init__()
        self.title_line = TwoEnds(id="title")
        self.title_line.ends = (title, "")
        self.field = Input(placeholder="your note", select_on_focus=False)

    def compose(self) -> ComposeResult:
        """Put the field under what must not be written in it."""
        yield self.title_line
        yield Prose([Part(NO_IDENTITY)])
        yield self.field
        yield Foot(footer(NOTE))

    def on_mount(self) -> None:
        """Type at once."""
        self.field.cursor_blink = False
        self.field.focus()

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Hand the note back."""
        self.dismiss(event.value)

    def action_keep(self) -> None:
        """Hand the note back."""
        self.dismiss(self.field.value)

    def action_close(self) -> None:
        """Hand nothing back."""
        self.dismiss(None)
