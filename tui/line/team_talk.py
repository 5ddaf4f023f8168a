"""A drill of a whole team: one key an event for the timekeeper, words for what the surgeon says."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.tui.line.drill_talk import DrillTalk
from chamberwise.tui.present.parts import GAP, Part, Tone
from chamberwise.tui.teaming import NEXT_LINE, PRESSES, TASKS, Team

HOW_TO = (
    f"One key and Enter for each event: {PRESSES} More than one letter is what the surgeon says. "
    f"{NEXT_LINE} shows the reader's next line, {TASKS} shows the tasks."
)


@dataclass
class TeamTalk(DrillTalk):
    """The drill of a team at one keyboard. Roles are kept, never names."""

    team: Team | None = None

    def open(self) -> None:
        """Print the brief, then who has which task."""
        assert self.team
        DrillTalk.open(self)
        self.paper.parts([*self.team.board(), GAP, Part(HOW_TO, tone=Tone.CALM), GAP])

    def hear(self, typed: str) -> None:
        """Take a key as an event, and more than a key as words."""
        assert self.team
        parts = self.team.hear(typed.strip())
        if parts is None:
            DrillTalk.hear(self, typed)
        else:
            self.paper.parts(parts)

    def leave(self) -> None:
        """Print who left what open, then what the drill came to."""
        assert self.team
        self.paper.parts(self.team.left())
        DrillTalk.leave(self)
