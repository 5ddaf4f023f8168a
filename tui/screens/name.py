"""Asking for another name for a record: a file that is there already is never written over."""

from __future__ import annotations

from pathlib import Path

from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.actions import NAME
from chamberwise.tui.bindings import bindings
from chamberwise.tui.footer import footer
from chamberwise.tui.keeping import free_name
from chamberwise.tui.present.parts import Part
from chamberwise.tui.widgets.foot import Foot
from chamberwise.tui.widgets.line import TwoEnds
from chamberwise.tui.widgets.prose import Prose
from textual.app import ComposeResult
from textual.screen import Screen
from textual.widgets import Input


class NameScreen(Screen[Path | None]):
    """Hands back another path, or nothing where the record is not to be saved."""

    BINDINGS = bindings(NAME)

    def __init__(self, taken: Path, title: str) -> None:
        super().__init__()
        self.taken = taken
        self.title_line = TwoEnds(id="title")
        self.title_line.ends = (title, "")
        self.field = Input(str(free_name(taken)), select_on_focus=False)

    def compose(self) -> ComposeResult:
        """Put the field under why another name is needed."""
        yield self.title_line
        yield Prose(
            [
                Part(
                    _("There is already a file {path}. Save under another name:").format(
                        path=self.taken
                    )
                )
            ]
        )
        yield self.field
        yield Foot(footer(NAME))

    def on_mount(self) -> None:
        """Type at once."""
        self.field.cursor_blink = False
        self.field.focus()

    def on_input_submitted(self) -> None:
        """Hand the name back."""
        self.action_keep()

    def action_keep(self) -> None:
        """Hand the name back."""
        typed = self.field.value.strip()
        self.dismiss(Path(typed).expanduser() if typed else None)

    def action_close(self) -> None:
        """Hand nothing back."""
        self.dismiss(None)
