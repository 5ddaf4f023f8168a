"""A drill line by line: cues as they come, a prompt with the time, and what was typed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from chamberwise.engine.drill.entries import Milliseconds
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.record.standing import STANDING
from chamberwise.tui.line.paper import Paper
from chamberwise.tui.present.drill_pages import clock_text, opening
from chamberwise.tui.present.parts import GAP, Part
from chamberwise.tui.rehearsal import Rehearsal

Reader = Callable[[Milliseconds | None], "str | None"]
"""Returns the next line, `WAITED` once so long has gone by without one, `None` at the end."""

WAITED = "\0"
LEAVE = ("q", "quit")
READ = N_("Enter when everybody has read this; then time goes by:")


@dataclass
class DrillTalk:
    """One drill told and answered line by line."""

    rehearsal: Rehearsal
    paper: Paper
    read: Reader
    go_on_with: str
    remarks: tuple[str, ...] = ()

    def open(self) -> None:
        """Print the brief."""
        self.paper.parts(Part(remark, "! ") for remark in self.remarks)
        self.paper.parts([*opening(self.rehearsal.drill, self.rehearsal.mode), GAP])

    def talk(self) -> None:
        """Go on until the drill is over or left, or there is nothing more to read."""
        self.open()
        if self.rehearsal.is_waiting:
            self.paper.prompt(_(READ))
            if self.read(None) is None:
                self.leave()
                return
            self.rehearsal.start()
        while not self.rehearsal.is_over:
            self.paper.prompt(f"{clock_text(self.rehearsal.stopwatch())} >")
            typed = self.read(self.rehearsal.waits)
            if typed is None:
                self.paper.say()
                break
            if typed == WAITED:
                self.paper.say()
                self.paper.parts(self.rehearsal.tick())
            elif typed.strip().casefold() in LEAVE:
                break
            else:
                self.hear(typed)
        self.leave()

    def hear(self, typed: str) -> None:
        """Print what comes of a line."""
        self.paper.parts(self.rehearsal.hear(typed))
        if self.rehearsal.lost:
            self.paper.parts([Part(self.rehearsal.lost, "! ")])
            self.rehearsal.lost = ""

    def close(self) -> None:
        """Print what it came to, over or not."""
        self.paper.parts([GAP, *self.rehearsal.debrief()])
        self.paper.say(_(STANDING))

    def leave(self) -> None:
        """Print what it came to, or how to go on."""
        self.paper.say()
        if self.rehearsal.is_over:
            self.paper.parts(self.rehearsal.debrief())
        elif self.rehearsal.path is not None:
            self.paper.say(_("The drill is kept. To go on with it:"))
            self.paper.verbatim(self.go_on_with)
        else:
            self.paper.say(_("The drill was left. Nothing of it is kept."))
        self.paper.say(_(STANDING))
