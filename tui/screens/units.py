"""The units whose sheets were found: one is chosen, and the library is shown as it has it."""

from __future__ import annotations

from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.actions import UNITS
from chamberwise.tui.bindings import bindings
from chamberwise.tui.footer import footer
from chamberwise.tui.present.parts import laid_out
from chamberwise.tui.present.units_page import NO_UNIT, units_page
from chamberwise.tui.units import Unit
from chamberwise.tui.widgets.foot import Foot
from chamberwise.tui.widgets.line import TwoEnds
from chamberwise.tui.widgets.prose import Prose
from chamberwise.tui.widgets.scrolling import Scrolling
from textual.app import ComposeResult
from textual.screen import Screen


class UnitsScreen(Screen["Unit | str | None"]):
    """Hands back a unit, `NO_UNIT`, or nothing."""

    BINDINGS = bindings(UNITS)

    def __init__(self, units: tuple[Unit, ...], chosen: int = 0) -> None:
        super().__init__()
        self.units = units
        self.chosen = chosen
        self.title_line = TwoEnds(id="title")
        self.title_line.ends = (_("Whose pathways"), "")
        self.page = Scrolling(takes_arrows=False)

    def compose(self) -> ComposeResult:
        """Put the units over the keys."""
        yield self.title_line
        yield self.page
        yield Foot(footer(UNITS))

    def on_mount(self) -> None:
        """Show them."""
        self.tell()

    def tell(self) -> None:
        """Show the units, the chosen one in view."""
        self.page.show(units_page(self.units, self.chosen), from_top=self.chosen == 0)
        self.call_after_refresh(self._into_view)

    def _into_view(self) -> None:
        rows = laid_out(self.page.prose.parts, max(8, self.page.prose.size.width))
        answer = self._answer(self.chosen)
        marked = [place for place, row in enumerate(rows) if row.part.answer == answer]
        self.page.into_view(marked[0], marked[-1])

    def _answer(self, place: int) -> str:
        return self.units[place - 1].file.shown_as if place else NO_UNIT

    def action_up(self) -> None:
        """Mark the one above."""
        self.chosen = max(0, self.chosen - 1)
        self.tell()

    def action_down(self) -> None:
        """Mark the one below."""
        self.chosen = min(len(self.units), self.chosen + 1)
        self.tell()

    def on_prose_picked(self, event: Prose.Picked) -> None:
        """Take the one that was clicked."""
        places = range(len(self.units) + 1)
        self.chosen = next(at for at in places if self._answer(at) == event.answer)
        self.action_open()

    def action_open(self) -> None:
        """Hand back the one marked."""
        self.dismiss(self.units[self.chosen - 1] if self.chosen else NO_UNIT)

    def action_close(self) -> None:
        """Hand back nothing."""
        self.dismiss(None)
