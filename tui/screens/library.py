"""The library: every pathway, how far it is approved, and walks to go on with."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.store.home import home
from chamberwise.engine.store.journal_file import InUseError
from chamberwise.exports.record.bare import bare_record
from chamberwise.exports.record.save import NotSavedError, save_record
from chamberwise.exports.record.translation import of_translation
from chamberwise.tui.actions import LIBRARY
from chamberwise.tui.bindings import bindings
from chamberwise.tui.footer import footer
from chamberwise.tui.keeping import free_name
from chamberwise.tui.present.parts import Part, laid_out
from chamberwise.tui.present.pathways import (
    PathwayRow,
    library_page,
    library_title,
    pathway_rows,
    unreadable,
)
from chamberwise.tui.screens.help import help_panel
from chamberwise.tui.screens.offer import GO_ON, KEEP_OLD, OfferScreen
from chamberwise.tui.screens.panel import Panel
from chamberwise.tui.screens.walk import WalkScreen
from chamberwise.tui.setting import Setting
from chamberwise.tui.sitting import sit_down
from chamberwise.tui.unfinished import go_on
from chamberwise.tui.walkable import problems_in_the_way
from chamberwise.tui.widgets.foot import Foot
from chamberwise.tui.widgets.line import TwoEnds
from chamberwise.tui.widgets.prose import Prose
from chamberwise.tui.widgets.scrolling import Scrolling
from textual.app import ComposeResult
from textual.screen import Screen

if TYPE_CHECKING:
    from chamberwise.tui.examining import Examined
    from chamberwise.tui.units import Unit


class LibraryScreen(Screen[None]):
    """The pathways to choose from."""

    BINDINGS = bindings(LIBRARY)

    def __init__(self, setting: Setting) -> None:
        super().__init__()
        self.setting = setting
        self.rows: tuple[PathwayRow, ...] = ()
        self.chosen = 0
        self.examined: dict[str, Examined] = {}
        """What the checker found of pathways so far."""
        self.title_line = TwoEnds(id="title")
        self.title_line.ends = library_title(setting.loaded)
        self.page = Scrolling(takes_arrows=False)
        self.said = Prose(id="said")

    def compose(self) -> ComposeResult:
        """Put the pathways over the keys."""
        yield self.title_line
        yield self.page
        yield self.said
        yield Foot(footer(LIBRARY))

    def on_screen_resume(self) -> None:
        """Look again for walks to go on with."""
        self._look_again()

    def _look_again(self) -> None:
        setting = self.setting
        self.title_line.show(*library_title(setting.loaded))
        self.rows = pathway_rows(setting.loaded, setting.clock().date(), setting.walks)
        self.tell()

    def tell(self) -> None:
        """Show the pathways, the chosen one in view."""
        parts = [*library_page(self.rows, self.chosen), *unreadable(self.setting.loaded)]
        self.page.show(parts, from_top=self.chosen == 0)
        self.call_after_refresh(self._into_view)

    def _into_view(self) -> None:
        rows = laid_out(self.page.prose.parts, max(8, self.page.prose.size.width))
        marked = [
            place
            for place, row in enumerate(rows)
            if self.rows and row.part.answer == self.rows[self.chosen].id
        ]
        if not marked:
            return
        top, height = self.page.pane.scroll_offset.y, self.page.pane.size.height
        if marked[0] < top or marked[-1] >= top + height:
            self.page.pane.scroll_to(y=max(0, marked[-1] + 1 - height), animate=False)

    def action_up(self) -> None:
        """Mark the pathway above."""
        self.chosen = max(0, self.chosen - 1)
        self.tell()

    def action_down(self) -> None:
        """Mark the pathway below."""
        self.chosen = max(0, min(len(self.rows) - 1, self.chosen + 1))
        self.tell()

    def on_prose_picked(self, event: Prose.Picked) -> None:
        """Mark and open the pathway that was clicked."""
        self.chosen = next(at for at, row in enumerate(self.rows) if row.id == event.answer)
        self.tell()
        self.action_open()

    def action_open(self) -> None:
        """Walk the pathway marked, or say what is in the way."""
        if not self.rows:
            return
        row, loaded = self.rows[self.chosen], self.setting.loaded
        problems = problems_in_the_way(loaded, loaded.file_of[row.id], self.setting.clock().date())
        if problems:
            parts = [Part(line) for line in problems.split("\n")]
            self.app.push_screen(Panel(_("{title}: not yet").format(title=row.title), parts))
        elif row.unfinished is not None and row.unfinished.steps:
            self.app.push_screen(OfferScreen(row), self._offered)
        else:
            self._afresh()

    def action_prove(self) -> None:
        """Check and prove the pathway marked."""
        if not self.rows:
            return
        from chamberwise.tui.screens.checker import CheckerScreen

        row = self.rows[self.chosen]
        self.app.push_screen(CheckerScreen(self.setting, row.id, self.examined))

    def action_drill(self) -> None:
        """Rehearse the pathway marked, from a seed nobody chose."""
        if not self.rows:
            return
        from chamberwise.tui.drilling import NoDrillError, drill_of
        from chamberwise.tui.screens.drill import DrillScreen

        row = self.rows[self.chosen]
        try:
            self.app.push_screen(DrillScreen(*drill_of(self.setting, row.id)))
        except NoDrillError as error:
            self.app.push_screen(
                Panel(_("{title}: no drill").format(title=row.title), [Part(str(error))])
            )

    def action_sheets(self) -> None:
        """Print a sheet of the pathway marked."""
        if not self.rows:
            return
        from chamberwise.tui.screens.sheets import SheetsScreen

        self.app.push_screen(SheetsScreen(self.setting, self.rows[self.chosen].id))

    def action_units(self) -> None:
        """Choose the unit whose pathways are shown."""
        from chamberwise.tui.screens.units import UnitsScreen
        from chamberwise.tui.units import base_of, units_in

        units = units_in(self.setting.sheets, base_of(self.setting))
        under_now = self.setting.loaded.sheet
        marked = (at for at, each in enumerate(units, 1) if each.file.shown_as == under_now)
        self.app.push_screen(UnitsScreen(units, next(marked, 0)), self._of_unit)

    def _of_unit(self, unit: Unit | str | None) -> None:
        """Show the pathways of a unit, or what is wrong with its sheet."""
        from chamberwise.tui.present.units_page import not_carried_out
        from chamberwise.tui.units import under, without_unit

        if unit is None:
            return
        setting = self.setting
        found = without_unit(setting) if isinstance(unit, str) else under(setting, unit.file)
        if isinstance(found, Setting):
            self.setting, self.chosen, self.examined = found, 0, {}
            self._look_again()
        elif not isinstance(unit, str):
            self.app.push_screen(Panel(_("Not carried out"), not_carried_out(unit, found)))

    def action_calculations(self) -> None:
        """Choose a calculation to work."""
        from chamberwise.tui.screens.calculations import CalculationsScreen

        self.app.push_screen(CalculationsScreen())

    def action_write(self) -> None:
        """Stay beside an editor in which the pathway marked is written."""
        if not self.rows:
            return
        from chamberwise.tui.drafting import draft_of
        from chamberwise.tui.present.units_page import beside_a_sheet
        from chamberwise.tui.screens.draft import DraftScreen

        loaded = self.setting.loaded
        if loaded.sheet:
            self.app.push_screen(Panel(Path(loaded.sheet).name, beside_a_sheet(loaded.sheet)))
            return
        draft = draft_of(loaded, loaded.file_of[self.rows[self.chosen].id])
        self.app.push_screen(DraftScreen(self.setting, draft))

    def _offered(self, choice: str | None) -> None:
        if choice is None:
            return
        if choice == GO_ON:
            self._go_on()
        elif choice == KEEP_OLD:
            self._keep_old()
        else:
            self._afresh()

    def _afresh(self) -> None:
        setting = self.setting
        sitting = sit_down(setting.loaded, self.rows[self.chosen].id, setting.clock, setting.walks)
        self.app.push_screen(WalkScreen(sitting, self._translation()))

    def _translation(self) -> tuple[str, ...]:
        return of_translation(self.setting.loaded.library, self.rows[self.chosen].id)

    def _go_on(self) -> None:
        found = self.rows[self.chosen].unfinished
        assert found is not None
        try:
            sitting = go_on(self.setting.loaded, found, self.setting.clock)
        except InUseError:
            self.said.show([Part(_("This walk is open in another terminal. Go on with it there."))])
            return
        torn = [found.torn] if found.torn else []
        self.app.push_screen(WalkScreen(sitting, [*torn, *self._translation()]))

    def _keep_old(self) -> None:
        found = self.rows[self.chosen].unfinished
        assert found is not None
        name = found.kept.path.name.removesuffix(".walk.jsonl")
        path = free_name(home() / "records" / f"{name}.txt")
        try:
            save_record(bare_record(found.kept.entries), path)
        except NotSavedError as error:
            self.said.show([Part(str(error))])
        else:
            self.said.show([Part(_("The record is saved as {path}.").format(path=path))])

    def action_help(self) -> None:
        """Show every key."""
        self.app.push_screen(help_panel(LIBRARY))
