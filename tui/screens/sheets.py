"""Printing from the library: a kind of sheet, its paper, and where the file was written."""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial
from pathlib import Path

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.store.home import register_path
from chamberwise.engine.store.register_file import RegisterError
from chamberwise.exports.paper.sizes import Paper
from chamberwise.exports.printing.kind import Kind
from chamberwise.tui.actions import SHEETS
from chamberwise.tui.beside import beside
from chamberwise.tui.bindings import bindings
from chamberwise.tui.fit_to_print import errors_in_the_way, rules_in_the_way
from chamberwise.tui.footer import footer
from chamberwise.tui.present.parts import GAP, Part, Tone
from chamberwise.tui.printing import (
    StoppedOrderError,
    UnusableOrderError,
    print_sheets,
    register,
)
from chamberwise.tui.setting import Setting
from chamberwise.tui.wanted import PACK, Wanted
from chamberwise.tui.widgets.foot import Foot
from chamberwise.tui.widgets.line import TwoEnds
from chamberwise.tui.widgets.scrolling import Scrolling
from textual.app import ComposeResult
from textual.screen import Screen
from textual.worker import Worker, WorkerState

KINDS = (*(kind.value for kind in Kind), PACK)
SIZED = (Kind.WALL_CHART.value, Kind.FULL.value, PACK)
"""What comes on paper of any size; the rest is made for A4."""


class SheetsScreen(Screen[None]):
    """Asks for the kind, then for the paper, and prints into the folder it was started in."""

    BINDINGS = bindings(SHEETS)

    def __init__(self, setting: Setting, pathway: str) -> None:
        super().__init__()
        self.setting = setting
        self.pathway = pathway
        self.what: str | None = None
        self.is_busy = False
        self.title_line = TwoEnds(id="title")
        title = setting.loaded.library.pathways[pathway].title
        self.title_line.ends = (_("On paper: {title}").format(title=title), "")
        self.page = Scrolling(_numbered(_("Which sheet?"), _words()))
        self.foot = Foot(_keys(len(KINDS)))

    def compose(self) -> ComposeResult:
        """Put the choices over the keys."""
        yield self.title_line
        yield self.page
        yield self.foot

    def action_choose(self, number: int) -> None:
        """Take the kind, then the paper."""
        choices = list(Paper) if self.what else list(KINDS)
        if self.is_busy or number > len(choices):
            return
        if self.what:
            self._print(list(Paper)[number - 1])
            return
        self.what = list(KINDS)[number - 1]
        if self.what in SIZED:
            self.page.show(
                _numbered(_("{kind}: on which paper?").format(kind=_word(self.what)), list(Paper))
            )
            self.foot.show(_keys(len(Paper)))
        else:
            self._print(None)

    def _print(self, paper: Paper | None) -> None:
        self.is_busy = True
        self.page.show([Part(_("Printing. Esc goes back."))])
        assert self.what is not None
        today = self.setting.clock().date()
        local = self.setting.loaded.library.local_to(self.pathway)
        unit = local.unit if local else None
        wanted = Wanted(self.pathway, self.what, today, unit=unit, paper=paper)
        self.run_worker(beside(partial(_printed, self.setting, wanted)))

    def on_worker_state_changed(self, event: Worker.StateChanged) -> None:
        """Say what came of it, and ask again."""
        if event.state is not WorkerState.SUCCESS or event.worker.result is None:
            return
        said = [Part(line) for line in event.worker.result]
        self.is_busy, self.what = False, None
        self.page.show([*said, GAP, *_numbered(_("Another sheet?"), _words())])
        self.foot.show(_keys(len(KINDS)))

    def action_close(self) -> None:
        """Go back to the library."""
        self.dismiss()


def _word(what: str) -> str:
    told = _("all of them, one file") if what == PACK else _(Kind(what).words)
    return f"{told[:1].upper()}{told[1:]}"


def _words() -> list[str]:
    return [_word(each) for each in KINDS]


def _keys(choices: int) -> str:
    return footer(SHEETS, {"choose": f"1-{choices}"})


def _numbered(asked: str, choices: Iterable[str]) -> list[Part]:
    parts = [Part(asked, "", Tone.STRONG), GAP]
    for number, choice in enumerate(choices, start=1):
        parts.append(Part(str(choice), f" {number}  ", Tone.PLAIN, Tone.KEY))
    return parts


def _printed(setting: Setting, wanted: Wanted) -> list[str]:
    """Print and register; return what to say of it."""
    loaded = setting.loaded
    file = loaded.file_of[wanted.pathway]
    problems = errors_in_the_way(loaded, file, wanted.made) or rules_in_the_way(
        loaded, wanted.pathway
    )
    if problems:
        return problems.split("\n")
    try:
        done = print_sheets(loaded.library, wanted)
    except (UnusableOrderError, StoppedOrderError) as error:
        return str(error).split("\n")
    said = [_("Written: {path}").format(path=Path(path).resolve()) for path in done.files]
    said += [
        _("Stamp of the {kind}: {code}").format(kind=_(kind.words), code=order.control.code)
        for kind, order in done.orders
    ]
    try:
        sheet = str(Path(loaded.sheet).resolve()) if loaded.sheet else ""
        register(loaded.library, done, register_path(), source=sheet)
    except RegisterError as error:
        said.append(_("Not registered. {error}").format(error=error))
    return [*said, *done.told]
