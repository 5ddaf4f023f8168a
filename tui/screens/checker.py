"""The checker: what is wrong with a pathway, and whether its safety rules hold on every walk."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.proof.replay_key import moves_of
from chamberwise.exports.record.standing import marks
from chamberwise.tui.actions import CHECKER
from chamberwise.tui.beside import beside
from chamberwise.tui.bindings import bindings
from chamberwise.tui.examining import Examined, checked, proved
from chamberwise.tui.footer import footer
from chamberwise.tui.present.arrange import SIDE_FROM
from chamberwise.tui.present.checker import (
    UNDER_WAY,
    CheckerRow,
    checker_page,
    checker_rows,
    first_to_show,
    in_short,
)
from chamberwise.tui.present.parts import Part, laid_out
from chamberwise.tui.replay import sit_down_to_replay
from chamberwise.tui.screens.help import help_panel
from chamberwise.tui.screens.walk import WalkScreen
from chamberwise.tui.setting import Setting
from chamberwise.tui.widgets.foot import Foot
from chamberwise.tui.widgets.line import TwoEnds
from chamberwise.tui.widgets.prose import Prose
from chamberwise.tui.widgets.scrolling import Scrolling
from textual.app import ComposeResult
from textual.containers import Container
from textual.screen import Screen
from textual.worker import Worker, WorkerState


class CheckerScreen(Screen[None]):
    """One pathway's problems and rules. The proof runs beside, so that every key still works."""

    BINDINGS = bindings(CHECKER)

    def __init__(self, setting: Setting, pathway: str, known: dict[str, Examined]) -> None:
        super().__init__()
        self.setting = setting
        self.pathway = pathway
        self.known = known
        """What was found of pathways before; nothing is proved twice."""
        self.today = setting.clock().date()
        self.found: Examined | None = None
        self.rows: tuple[CheckerRow, ...] = ()
        self.chosen = 0
        self.title_line = TwoEnds(id="title")
        about = setting.loaded.library.pathways[pathway]
        marked = "  ".join((*marks(about, self.today), _("Check and proof")))
        self.title_line.ends = (f"{marked}: {about.title}", _(UNDER_WAY))
        self.list = Scrolling(
            [Part(_("Checking. Esc goes back."))],
            takes_arrows=False,
            more=_("more below: press Down"),
            above=_("the rest is above: press Up"),
            id="rows",
        )
        self.told = Scrolling(
            takes_arrows=False,
            more=_("more below: press Page Down"),
            above=_("the rest is above: press Page Up"),
            id="told",
        )
        self.said = Prose(id="said")
        self.foot = Foot("")

    def compose(self) -> ComposeResult:
        """Put the rows over, or beside, what is told of the one chosen."""
        yield self.title_line
        with Container(id="both"):
            yield self.list
            yield self.told
        yield self.said
        yield self.foot

    def on_mount(self) -> None:
        """Begin, unless it was all found before."""
        if self.pathway in self.known:
            self.show(self.known[self.pathway])
        else:
            self._begin(partial(checked, self.setting.loaded, self.pathway, self.today))

    def _begin(self, work: Callable[[], Examined]) -> None:
        self.run_worker(beside(work))

    def on_worker_state_changed(self, event: Worker.StateChanged) -> None:
        """Show what was found, and go on to the proof where that is still to come."""
        found = event.worker.result
        if event.state is not WorkerState.SUCCESS or not isinstance(found, Examined):
            return
        self.show(found)
        if found.is_whole:
            self.known[self.pathway] = found
        else:
            self._begin(partial(proved, self.setting.loaded, self.pathway, self.today, found))

    def show(self, found: Examined) -> None:
        """Show what was found; a broken rule is marked first, unless a row was chosen already."""
        self.found = found
        self.rows = checker_rows(found, self.setting.loaded.texts)
        self.chosen = self.chosen or first_to_show(self.rows)
        self.title_line.show(self.title_line.ends[0], in_short(found))
        self.tell()

    def on_resize(self) -> None:
        """Put the two beside each other where there is room."""
        self.foot.show(footer(CHECKER, width=self.size.width - 2))
        self.set_class(self.size.width >= SIDE_FROM, "wide")
        if self.rows:
            self.call_after_refresh(self._into_view)

    def tell(self) -> None:
        """Show the rows, the chosen one in view, and what is told of it from its beginning."""
        assert self.found is not None
        self.said.show([])
        self.list.show(checker_page(self.rows, self.chosen, self.found.proof), from_top=False)
        self.told.show(self.rows[self.chosen].told)
        self.call_after_refresh(self._into_view)

    def _into_view(self) -> None:
        width = max(8, self.list.prose.size.width)
        lines = laid_out(self.list.prose.parts, width)
        marked = [at for at, line in enumerate(lines) if line.part.answer == str(self.chosen)]
        if marked:
            first = 0 if self.chosen == 0 else marked[0]
            self.list.into_view(first, marked[-1])

    def action_up(self) -> None:
        """Choose the row above."""
        self._choose(self.chosen - 1)

    def action_down(self) -> None:
        """Choose the row below."""
        self._choose(self.chosen + 1)

    def _choose(self, row: int) -> None:
        if 0 <= row < len(self.rows):
            self.chosen = row
            self.tell()

    def on_prose_picked(self, event: Prose.Picked) -> None:
        """Choose the row that was clicked."""
        self._choose(int(event.answer))

    def action_page_down(self) -> None:
        """Read on in what is told."""
        self.told.turn_page()

    def action_page_up(self) -> None:
        """Read back in what is told."""
        self.told.turn_back()

    def action_replay(self) -> None:
        """Open the walk that breaks the rule chosen, with its moves ahead."""
        row = self.rows[self.chosen] if self.rows else None
        if row is None or not row.key:
            self.said.show([Part(_("Only a broken rule has a walk to be replayed."))])
            return
        setting = self.setting
        pathway, moves = moves_of(setting.loaded, row.key, [self.pathway])
        sitting = sit_down_to_replay(setting.loaded, pathway, moves, setting.clock)
        self.app.push_screen(WalkScreen(sitting))

    def action_help(self) -> None:
        """Show every key."""
        self.app.push_screen(help_panel(CHECKER))

    def action_close(self) -> None:
        """Go back to the library."""
        self.dismiss()
