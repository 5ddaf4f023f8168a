"""The pathway around the walk, and its phases to look at. Looking moves nothing."""

from __future__ import annotations

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.walk.walk import Walk
from chamberwise.tui.actions import MAP
from chamberwise.tui.bindings import bindings
from chamberwise.tui.footer import footer
from chamberwise.tui.present.map_page import around, phase_steps
from chamberwise.tui.widgets.foot import Foot
from chamberwise.tui.widgets.line import TwoEnds
from chamberwise.tui.widgets.scrolling import Scrolling
from textual.app import ComposeResult
from textual.screen import Screen


class MapScreen(Screen[None]):
    """Shows the steps around the one stood on, or one whole phase."""

    BINDINGS = bindings(MAP)

    def __init__(self, walk: Walk, title: str) -> None:
        super().__init__()
        self.walk = walk
        self.phases = tuple(walk.library.pathways[walk.state.place.pathway].phases)
        self.looking_at: int | None = None
        self.title_line = TwoEnds(id="title")
        self.title_line.ends = (title, _("looking only, nothing moves"))
        self.page = Scrolling()

    def compose(self) -> ComposeResult:
        """Put the title over the page and the keys under it."""
        yield self.title_line
        yield self.page
        yield Foot(footer(MAP))

    def on_mount(self) -> None:
        """Begin where the walk is."""
        self.page.pane.focus()
        self.tell()

    def tell(self) -> None:
        """Show what is looked at."""
        at = self.looking_at
        self.page.show(around(self.walk) if at is None else phase_steps(self.walk, self.phases[at]))

    def action_earlier(self) -> None:
        """Look at the phase before."""
        self._look(-1)

    def action_later(self) -> None:
        """Look at the phase after."""
        self._look(1)

    def _look(self, by: int) -> None:
        if self.looking_at is None:
            phase = self.walk.step.phase
            self.looking_at = self.phases.index(phase) if phase in self.phases else 0
        else:
            self.looking_at = min(len(self.phases) - 1, max(0, self.looking_at + by))
        self.tell()

    def action_here(self) -> None:
        """Go back to where the walk is."""
        self.looking_at = None
        self.tell()

    def action_close(self) -> None:
        """Go back to the walk."""
        self.dismiss()
