"""A drill of a whole team: one key an event for the timekeeper, words for what the surgeon says."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from chamberwise.engine.drill.entries import Milliseconds
from chamberwise.engine.drill.taking import SECOND, first_cue_at, happened
from chamberwise.engine.drill.team import Owned, entries_of, left_open, progress
from chamberwise.tui.line.drill_talk import DrillTalk
from chamberwise.tui.present.parts import GAP, Part, Tone

STAGES = ((10, "in the first 10 s"), (30, "by 30 s"), (60, "by 60 s"))
HOW_TO = (
    "One key and Enter for each event: the key of a task when it happens. Where a task is a "
    "request (*), the first press is asked, the second read back, the third done. More than one "
    "letter is what the surgeon says. > shows the reader's next line, . shows the tasks."
)
NEXT_LINE, TASKS = ">", "."


@dataclass
class TeamTalk(DrillTalk):
    """The drill of a team at one keyboard. Roles are kept, never names."""

    owned: tuple[Owned, ...] = ()
    titles: dict[str, str] = field(default_factory=dict)
    """What each duty is called."""
    lines_read: int = 0

    def open(self) -> None:
        """Print the brief, then who has which task."""
        DrillTalk.open(self)
        self.paper.parts([*self.board(), GAP, Part(HOW_TO, tone=Tone.CALM), GAP])

    def hear(self, typed: str) -> None:
        """Take a key as an event, and more than a key as words."""
        said = typed.strip()
        if said == NEXT_LINE:
            self.paper.parts(self._read_on())
        elif said == TASKS:
            self.paper.parts(self.board())
        elif len(said) == 1 and said.isalpha():
            self.paper.parts(self._pressed(said.casefold()))
        else:
            DrillTalk.hear(self, typed)

    def board(self) -> list[Part]:
        """Return every task with its key, its owner and how far it is."""
        parts: list[Part] = []
        for within, title in STAGES:
            tasks = [each for each in self.owned if _stage(each) == within]
            if tasks:
                parts += [GAP, Part(title[0].upper() + title[1:], tone=Tone.HEADING)]
                parts += [self._task(each) for each in tasks]
        return parts

    def leave(self) -> None:
        """Print who left what open, then what the drill came to."""
        open_tasks = left_open(self.rehearsal.drill, self.owned)
        if self.rehearsal.is_over and open_tasks:
            self.paper.parts([GAP, Part("Tasks that nobody reported done", tone=Tone.HEADING)])
            self.paper.parts(self._task(each) for each in open_tasks)
        DrillTalk.leave(self)

    def _task(self, owned: Owned) -> Part:
        asked, read, done = progress(self.rehearsal.drill, owned.task)
        how_far = "done" if done else "read back" if read else "asked" if asked else "open"
        star = "*" if owned.task.is_request else " "
        text = f"{self.titles[owned.owner]}: {owned.task.text} [{how_far}]"
        return Part(text, f"  {owned.key}{star} ", lead_tone=Tone.KEY)

    def _pressed(self, key: str) -> list[Part]:
        owned = next((each for each in self.owned if each.key == key), None)
        if owned is None:
            return [Part(f"`{key}` is no task. . shows the tasks.")]
        brought = self.rehearsal.tick()
        drill, at = self.rehearsal.drill, self.rehearsal.now
        entries = entries_of(drill, owned, at)
        if not entries:
            return [*brought, Part("Done already.")]
        taken = happened(drill, entries, at)
        self.rehearsal.go_on(taken.drill)
        seen = [Part(text, "  ", Tone.STRONG) for text in taken.seen]
        late = _late(owned, at, first_cue_at(drill))
        return [*brought, self._task(owned), *([Part(late, "  ")] if late else []), *seen]

    def _read_on(self) -> list[Part]:
        lines: Sequence[str] = self.rehearsal.drill.scenario.book.reader
        if self.lines_read >= len(lines):
            return [Part("The reader has no more lines.")]
        self.lines_read += 1
        text = lines[self.lines_read - 1]
        return [Part(text, f"Reader {self.lines_read}: ", lead_tone=Tone.KEY)]


def _stage(owned: Owned) -> int:
    return next((within for within, _ in STAGES if owned.task.within <= within), STAGES[-1][0])


def _late(owned: Owned, at: Milliseconds, first_cue: Milliseconds | None) -> str:
    if first_cue is None:
        return ""
    over = (at - first_cue) // SECOND - owned.task.within
    return f"{over} s past its local target of {owned.task.within} s." if over > 0 else ""
