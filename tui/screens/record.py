"""The record of the walk so far, and saving it."""

from __future__ import annotations

from pathlib import Path

from chamberwise.engine.store.home import home
from chamberwise.exports.record.extract import record_of
from chamberwise.exports.record.text import record_text
from chamberwise.tui.actions import RECORD
from chamberwise.tui.bindings import bindings
from chamberwise.tui.footer import footer
from chamberwise.tui.keeping import default_path, is_taken, keep_record
from chamberwise.tui.present.parts import Part
from chamberwise.tui.screens.name import NameScreen
from chamberwise.tui.sitting import Sitting
from chamberwise.tui.widgets.foot import Foot
from chamberwise.tui.widgets.line import TwoEnds
from chamberwise.tui.widgets.prose import Prose
from chamberwise.tui.widgets.scrolling import Scrolling
from textual.app import ComposeResult
from textual.screen import Screen


class RecordScreen(Screen[None]):
    """Shows the record as it would be saved."""

    BINDINGS = bindings(RECORD)

    def __init__(self, sitting: Sitting, record_to: str, title: str) -> None:
        super().__init__()
        self.sitting = sitting
        self.record_to = Path(record_to) if record_to else None
        self.title_line = TwoEnds(id="title")
        self.title_line.ends = (title, "")
        self.said = Prose(id="said")
        text = record_text(record_of(sitting.walk, sitting.today))
        self.page = Scrolling([_line(line) for line in text.split("\n")])

    def compose(self) -> ComposeResult:
        """Put the record over what was said of saving it."""
        yield self.title_line
        yield self.page
        yield self.said
        yield Foot(footer(RECORD))

    def on_mount(self) -> None:
        """Let the arrow keys scroll at once."""
        self.page.pane.focus()

    def action_save(self) -> None:
        """Save the record and say where; ask for another name where a file is in the way."""
        self._save(self.record_to or default_path(self.sitting, home()))

    def _save(self, path: Path | None) -> None:
        if path is None:
            return
        sitting = self.sitting
        if sitting.is_begun and is_taken(path, sitting.records):
            self.app.push_screen(NameScreen(path, self.title_line.ends[0]), self._save)
        else:
            self.said.show([Part(keep_record(sitting, path, home()))])

    def action_close(self) -> None:
        """Go back to the walk."""
        self.dismiss()


def _line(line: str) -> Part:
    indent = len(line) - len(line.lstrip())
    return Part(line[indent:], line[:indent])
