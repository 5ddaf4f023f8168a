"""Writing a note."""

from __future__ import annotations

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.record.standing import NO_IDENTITY
from chamberwise.tui.actions import NOTE
from chamberwise.tui.bindings import bindings
from chamberwise.tui.footer import footer
from chamberwise.tui.identity import LIKE_A_PATIENT, may_name_a_patient
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
        self.warning = Prose(id="said")
        self.asked = ""
        """The note that stood in the field when it was last asked whether to keep it."""
        self.field = Input(placeholder=_("your note"), select_on_focus=False)

    def compose(self) -> ComposeResult:
        """Put the field under what must not be written in it."""
        yield self.title_line
        yield Prose([Part(_(NO_IDENTITY))])
        yield self.field
        yield self.warning
        yield Foot(footer(NOTE))

    def on_mount(self) -> None:
        """Type at once."""
        self.field.cursor_blink = False
        self.field.focus()

    def on_input_submitted(self) -> None:
        """Hand the note back."""
        self.action_keep()

    def action_keep(self) -> None:
        """Hand the note back; one that may name a patient only once it is confirmed."""
        text = self.field.value
        if may_name_a_patient(text) and text != self.asked:
            self.asked = text
            again = _("Press Enter again to keep it, or change it.")
            self.warning.show([Part(f"{_(LIKE_A_PATIENT)} {again}")])
        else:
            self.dismiss(text)

    def action_close(self) -> None:
        """Hand nothing back."""
        self.dismiss(None)
