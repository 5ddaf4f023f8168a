"""Scripted drills: a line each, `@12` before it says how many seconds after the first cue."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from chamberwise.engine.drill.entries import Milliseconds
from chamberwise.engine.drill.taking import SECOND
from chamberwise.tui.line.drill_talk import LEAVE, DrillTalk
from chamberwise.tui.line.script import answers_in
from chamberwise.tui.present.drill_pages import clock_text

BETWEEN = 4
"""Seconds from one line to the next, where none are given."""

_TIMED = re.compile(r"@(\d{1,4})\s+(\S.*)")


@dataclass
class HandSetClock:
    """A stopwatch that stands still until it is set; it never goes back."""

    now: Milliseconds = 0

    def __call__(self) -> Milliseconds:
        """Return the time it was set to."""
        return self.now

    def set(self, at: Milliseconds) -> None:
        """Set it, never back."""
        self.now = max(self.now, at)


def follow_drill(talk: DrillTalk, clock: HandSetClock, lines: Iterable[str]) -> None:
    """Do what a script says, each line at its time."""
    talk.open()
    first = talk.rehearsal.drill.scenario.first_cue * SECOND
    clock.set(first)
    talk.paper.parts(talk.rehearsal.tick())
    for seconds, text in _timed(lines):
        clock.set(clock.now + BETWEEN * SECOND if seconds is None else first + seconds * SECOND)
        talk.paper.parts(talk.rehearsal.tick())
        if talk.rehearsal.is_over or text.casefold() in LEAVE:
            break
        talk.paper.prompt(f"{clock_text(clock.now)} >")
        talk.paper.say(text)
        talk.hear(text)


def _timed(lines: Iterable[str]) -> Iterator[tuple[int | None, str]]:
    for line in answers_in(lines):
        found = _TIMED.fullmatch(line.text)
        yield (int(found[1]), found[2]) if found else (None, line.text)
