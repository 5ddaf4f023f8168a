"""Beside an editor: a file's problems, the graph around a step, its rules, its chart; at every

save anew.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from contextlib import suppress
from functools import partial
from pathlib import Path
from typing import TypeVar

from chamberwise.engine.exploration.wanted import NobodyWaitsError, wanted_while
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.actions import DRAFT
from chamberwise.tui.beside import beside
from chamberwise.tui.bindings import bindings
from chamberwise.tui.drafting import Draft, Stamps, read_again, stamps
from chamberwise.tui.examining import Examined
from chamberwise.tui.finding import Finder
from chamberwise.tui.footer import footer
from chamberwise.tui.present.arrange import SIDE_FROM
from chamberwise.tui.present.draft import DraftRow, Stage, View, page, rows_of, state_of
from chamberwise.tui.present.parts import laid_out
from chamberwise.tui.screens.help import help_panel
from chamberwise.tui.setting import Setting
from chamberwise.tui.widgets.foot import Foot
from chamberwise.tui.widgets.line import TwoEnds
from chamberwise.tui.widgets.prose import Prose
from chamberwise.tui.widgets.scrolling import Scrolling
from textual.app import ComposeResult
from textual.containers import Container
from textual.screen import Screen

SECONDS_BETWEEN_LOOKS = 0.05
Result = TypeVar("Result")


class DraftScreen(Screen[None]):
    """One file while it is written. What takes long runs beside, and a save lets it drop."""

    BINDINGS = bindings(DRAFT)

    def __init__(self, setting: Setting, draft: Draft) -> None:
        super().__init__()
        self.draft = draft
        self.finder = Finder(setting.clock().date())
        self.view = View.PROBLEMS
        self.found = Examined(())
        self.stage = Stage.READ
        self.saves = 0
        self.lying: Stamps = draft.stamps
        """The files as they lay at the last look; they are read once they lie still."""
        self.reading: Stamps = draft.stamps
        """The files as they were read, or are being read."""
        self.rows: tuple[DraftRow, ...] = ()
        self.chosen = dict.fromkeys(View, "")
        """By view the name of the row chosen: it stays chosen over a save."""
        self.title_line = TwoEnds(id="title")
        self.list = Scrolling(
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
        self.foot = Foot("")

    def compose(self) -> ComposeResult:
        """Put the rows over, or beside, what is told of the one chosen."""
        yield self.title_line
        with Container(id="both"):
            yield self.list
            yield self.told
        yield self.foot

    def on_mount(self) -> None:
        """Show at once what was read, look closer, and then at every save."""
        self.show(Examined(tuple(self.draft.file.problems)), Stage.READ)
        self._look(lambda: self.draft)
        self.set_interval(SECONDS_BETWEEN_LOOKS, self._is_saved)

    def _is_saved(self) -> None:
        """Read again once the files have changed and lie still."""
        now = stamps(self.draft.loaded.files)
        if now == self.lying and now != self.reading:
            self.reading = now
            self.title_line.show(self.title_line.ends[0], _("saved, reading it"))
            self._look(partial(read_again, self.draft, now))
        self.lying = now

    def _look(self, read: Callable[[], Draft]) -> None:
        self.saves += 1
        self.run_worker(self._all_of_it(self.saves, read))

    async def _all_of_it(self, save: int, read: Callable[[], Draft]) -> None:
        """Show what is seen at once, then every check, then the proof; a later save goes first."""
        finder = self.finder
        loop = asyncio.get_running_loop()

        def tell(found: Examined) -> None:
            with suppress(RuntimeError):  # the program was left meanwhile
                loop.call_soon_threadsafe(self._show_of, save, found, Stage.CHECKED)

        with suppress(NobodyWaitsError):
            draft = await self._beside(save, read)
            found = await self._beside(save, partial(finder.at_once, draft))
            self.draft = draft
            self.show(found, Stage.SEEN)
            found = await self._beside(save, partial(finder.whole, draft))
            self.show(found, Stage.CHECKED)
            found = await self._beside(save, partial(finder.proof, draft, found, tell))
            self.show(found, Stage.CHECKED)

    async def _beside(self, save: int, work: Callable[[], Result]) -> Result:
        """Return what some work returns. Raises `NobodyWaitsError` once there is a later save."""

        def is_wanted() -> bool:
            return save == self.saves and self.is_attached

        def while_wanted() -> Result:
            with wanted_while(is_wanted):
                return work()

        result = await beside(while_wanted)
        if not is_wanted():
            raise NobodyWaitsError
        return result

    def _show_of(self, save: int, found: Examined, stage: Stage) -> None:
        if save == self.saves and self.is_attached:
            self.show(found, stage)

    def show(self, found: Examined, stage: Stage) -> None:
        """Show what was found so far."""
        self.found, self.stage = found, stage
        self.tell()

    def tell(self) -> None:
        """Show the rows of the view, the chosen one in sight, and what is told of it."""
        self.rows = rows_of(self.view, self.draft, self.found)
        names = [row.name for row in self.rows]
        at = names.index(self.chosen[self.view]) if self.chosen[self.view] in names else 0
        place = tuple(View).index(self.view) + 1
        state = state_of(self.found, self.stage)
        title = f"{place}: {_(self.view)}, {Path(self.draft.shown_as).name}"
        self.title_line.show(title, state)
        self.list.show(page(self.rows, at), from_top=False)
        self.told.show(self.rows[at].told)
        self.call_after_refresh(self._into_view, at)

    def _into_view(self, at: int) -> None:
        lines = laid_out(self.list.prose.parts, max(8, self.list.prose.size.width))
        marked = [place for place, line in enumerate(lines) if line.part.answer == str(at)]
        if marked:
            self.list.into_view(0 if at == 0 else marked[0], marked[-1])

    def on_resize(self) -> None:
        """Put the two beside each other where there is room."""
        self.foot.show(footer(DRAFT, width=self.size.width - 2))
        self.set_class(self.size.width >= SIDE_FROM, "wide")
        self.set_class(self.view is View.CHART, "chart")

    def action_up(self) -> None:
        """Choose the row above."""
        self._choose(-1)

    def action_down(self) -> None:
        """Choose the row below."""
        self._choose(1)

    def _choose(self, by: int) -> None:
        names = [row.name for row in self.rows]
        chosen = self.chosen[self.view]
        at = (names.index(chosen) if chosen in names else 0) + by
        if 0 <= at < len(names):
            self.chosen[self.view] = names[at]
            self.tell()

    def on_prose_picked(self, event: Prose.Picked) -> None:
        """Choose the row that was clicked."""
        self.chosen[self.view] = self.rows[int(event.answer)].name
        self.tell()

    def action_view(self, number: int) -> None:
        """Show problems, steps, rules or the chart."""
        self.view = tuple(View)[number - 1]
        self.set_class(self.view is View.CHART, "chart")
        self.tell()

    def action_next_view(self) -> None:
        """Show the next of them."""
        self.action_view((tuple(View).index(self.view) + 1) % len(View) + 1)

    def action_page_down(self) -> None:
        """Read on in what is told."""
        self.told.turn_page()

    def action_page_up(self) -> None:
        """Read back in what is told."""
        self.told.turn_back()

    def action_help(self) -> None:
        """Show every key."""
        self.app.push_screen(help_panel(DRAFT))

    def action_close(self) -> None:
        """Go back to the library, or leave where there is none behind."""
        if len(self.app.screen_stack) > 2:
            self.dismiss()
        else:
            self.app.exit(0)
