"""The calculations to choose from."""

from __future__ import annotations

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.registry import calculations
from chamberwise.tui.actions import CALCULATIONS
from chamberwise.tui.bindings import bindings
from chamberwise.tui.footer import footer
from chamberwise.tui.present.form_page import calculations_page
from chamberwise.tui.present.parts import laid_out
from chamberwise.tui.screens.form import FormScreen
from chamberwise.tui.widgets.foot import Foot
from chamberwise.tui.widgets.line import TwoEnds
from chamberwise.tui.widgets.prose import Prose
from chamberwise.tui.widgets.scrolling import Scrolling
from textual.app import ComposeResult
from textual.screen import Screen


class CalculationsScreen(Screen[None]):
    """Marks one, and opens its form."""

    BINDINGS = bindings(CALCULATIONS)

    def __init__(self) -> None:
        super().__init__()
        self.all = tuple(calculations())
        self.chosen = 0
        self.title_line = TwoEnds(id="title")
        self.title_line.ends = (_("Calculations, line by line"), "")
        self.page = Scrolling(takes_arrows=False)

    def compose(self) -> ComposeResult:
        """Put the calculations over the keys."""
        yield self.title_line
        yield self.page
        yield Foot(footer(CALCULATIONS))

    def on_mount(self) -> None:
        """Show them."""
        self.tell()

    def tell(self) -> None:
        """Show the calculations, the chosen one in view."""
        self.page.show(calculations_page(self.all, self.chosen), from_top=self.chosen == 0)
        self.call_after_refresh(self._into_view)

    def _into_view(self) -> None:
        rows = laid_out(self.page.prose.parts, max(8, self.page.prose.size.width))
        name = self.all[self.chosen].name
        marked = [place for place, row in enumerate(rows) if row.part.answer == name]
        self.page.into_view(marked[0], marked[-1])

    def action_up(self) -> None:
        """Mark the one above."""
        self.chosen = max(0, self.chosen - 1)
        self.tell()

    def action_down(self) -> None:
        """Mark the one below."""
        self.chosen = min(len(self.all) - 1, self.chosen + 1)
        self.tell()

    def on_prose_picked(self, event: Prose.Picked) -> None:
        """Mark and open the one that was clicked."""
        self.chosen = next(at for at, each in enumerate(self.all) if each.name == event.answer)
        self.tell()
        self.action_open()

    def action_open(self) -> None:
        """Open the form of the one marked."""
        self.app.push_screen(FormScreen(self.all[self.chosen]))

    def action_close(self) -> None:
        """Go back to the library."""
        self.dismiss()
