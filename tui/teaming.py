"""A whole team at one keyboard: a key for each task, the reader's lines, and who has what open.

Line mode and screen hand it what was typed or pressed. Roles are kept, never names.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from chamberwise.engine.drill.entries import Began, Milliseconds
from chamberwise.engine.drill.taking import SECOND, first_cue_at, happened
from chamberwise.engine.drill.team import Owned, entries_of, left_open, owners, progress
from chamberwise.tui.present.parts import GAP, Part, Tone
from chamberwise.tui.rehearsal import Rehearsal

STAGES = ((10, "in the first 10 s"), (30, "by 30 s"), (60, "by 60 s"))
NEXT_LINE, TASKS = ">", "."
PRESSES = (
    "the key of a task when it happens. Where a task is a request (*), the first press is asked, "
    "the second read back, the third done."
)
TEAM = 2
"""From so many roles on it is the drill of a team."""


@dataclass
class Team:
    """The tasks of a drill with their owners."""

    rehearsal: Rehearsal
    owned: tuple[Owned, ...]
    lines_read: int = 0

    def hear(self, said: str) -> list[Part] | None:
        """Return what comes of a key; None where what was typed are words."""
        if said == NEXT_LINE:
            return self.read_on()
        if said == TASKS:
            return self.board()
        if len(said) == 1 and said.isalpha():
            return self._pressed(said.casefold())
        return None

    def board(self) -> list[Part]:
        """Return every task with its key, its owner and how far it is."""
        parts: list[Part] = []
        for within, title in STAGES:
            tasks = [each for each in self.owned if _stage(each) == within]
            if tasks:
                parts += [GAP, Part(title[0].upper() + title[1:], tone=Tone.HEADING)]
                parts += [self._task(each) for each in tasks]
        return parts

    def still_open(self, most: int) -> list[Part]:
        """Return so many of the tasks not done, and how many more there are."""
        left = left_open(self.rehearsal.drill, self.owned)
        shown = [self._task(each, open_too=False) for each in left[:most]]
        more = len(left) - most
        return [*shown, *([Part(f"and {more} more: {TASKS} shows all")] if more > 0 else [])]

    def left(self) -> Iterator[Part]:
        """Yield who left what open once the drill is over; nothing before."""
        left = left_open(self.rehearsal.drill, self.owned)
        if self.rehearsal.is_over and left:
            yield from (GAP, Part("Tasks that nobody reported done", tone=Tone.HEADING))
            yield from (self._task(each) for each in left)

    def read_on(self) -> list[Part]:
        """Return the reader's next line."""
        lines = self.rehearsal.drill.scenario.book.reader
        if self.lines_read >= len(lines):
            return [Part("The reader has no more lines.")]
        self.lines_read += 1
        text = lines[self.lines_read - 1]
        return [Part(text, f"Reader {self.lines_read}: ", lead_tone=Tone.KEY)]

    def _task(self, owned: Owned, *, open_too: bool = True) -> Part:
        asked, read, done = progress(self.rehearsal.drill, owned.task)
        how_far = "done" if done else "read back" if read else "asked" if asked else "open"
        star = "*" if owned.task.is_request else " "
        duties = self.rehearsal.drill.scenario.library.shared.duties
        told = f" [{how_far}]" if open_too or how_far != "open" else ""
        text = f"{duties[owned.owner].title}: {owned.task.text}{told}"
        return Part(text, f"  {owned.key}{star} ", lead_tone=Tone.KEY)

    def _pressed(self, key: str) -> list[Part]:
        owned = next((each for each in self.owned if each.key == key), None)
        if owned is None:
            return [Part(f"`{key}` is no task. {TASKS} shows the tasks.")]
        brought = self.rehearsal.tick()
        if self.rehearsal.is_over:
            return brought
        drill, at = self.rehearsal.drill, self.rehearsal.now
        entries = entries_of(drill, owned, at)
        if not entries:
            return [*brought, Part("Done already.")]
        taken = happened(drill, entries, at)
        self.rehearsal.go_on(taken.drill)
        if taken.seen:
            self.rehearsal.last_seen = taken.seen
        seen = [Part(text, "  ", Tone.STRONG) for text in taken.seen]
        late = _late(owned, at, first_cue_at(drill))
        return [*brought, self._task(owned), *([Part(late, "  ")] if late else []), *seen]


def team_of(rehearsal: Rehearsal) -> Team | None:
    """Return the team of a drill; None where somebody drills alone."""
    began = rehearsal.drill.journal[0]
    assert isinstance(began, Began)
    if len(began.roles) < TEAM:
        return None
    return Team(rehearsal, owners(rehearsal.drill.scenario.book, began.roles))


def debriefed(rehearsal: Rehearsal) -> Iterable[Part]:
    """Return what a drill came to, what a team left open before it."""
    team = team_of(rehearsal)
    return [*(team.left() if team else ()), *([GAP] if team else []), *rehearsal.debrief()]


def _stage(owned: Owned) -> int:
    return next((within for within, _ in STAGES if owned.task.within <= within), STAGES[-1][0])


def _late(owned: Owned, at: Milliseconds, first_cue: Milliseconds | None) -> str:
    if first_cue is None:
        return ""
    over = (at - first_cue) // SECOND - owned.task.within
    return f"{over} s past its local target of {owned.task.within} s." if over > 0 else ""
