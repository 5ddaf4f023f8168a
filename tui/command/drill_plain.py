"""A drill line by line: typed, piped or scripted."""

from __future__ import annotations

import io
import sys
from argparse import Namespace
from typing import TYPE_CHECKING

from chamberwise.tui.command.status import Status
from chamberwise.tui.command.walk_plain import lines_of
from chamberwise.tui.line.drill_script import HandSetClock, follow_drill
from chamberwise.tui.line.drill_talk import DrillTalk
from chamberwise.tui.line.paper import Paper
from chamberwise.tui.line.team_talk import TeamTalk
from chamberwise.tui.line.waiting import read_or_wait
from chamberwise.tui.teaming import team_of
from chamberwise.tui.terminal import line_width

if TYPE_CHECKING:
    from chamberwise.tui.command.drill import Ready
    from chamberwise.tui.rehearsal import Rehearsal


def is_by_hand(arguments: Namespace) -> bool:
    """Whether somebody types as time goes by; piped, the clock goes by the lines."""
    return arguments.answers is None and sys.stdin.isatty()


def drill_plain(
    ready: Ready, rehearsal: Rehearsal, clock: HandSetClock | None, remarks: tuple[str, ...]
) -> int:
    """Drill in line mode and return the exit status."""
    if isinstance(sys.stdin, io.TextIOWrapper):
        sys.stdin.reconfigure(errors="replace")
    paper = Paper(sys.stdout, line_width())
    talk = _talk(ready, rehearsal, paper, remarks)
    try:
        if clock is None:
            talk.talk()
        else:
            follow_drill(talk, clock, lines_of(ready.arguments.answers or "-"))
            talk.close()
    except KeyboardInterrupt:
        paper.say()
        talk.leave()
        return Status.INTERRUPTED
    return Status.CLEAN


def _talk(ready: Ready, rehearsal: Rehearsal, paper: Paper, remarks: tuple[str, ...]) -> DrillTalk:
    """Return the conversation: of a team where more than one role is in the drill."""
    team, go_on_with = team_of(rehearsal), ready.go_on_with
    if team is None:
        return DrillTalk(rehearsal, paper, read_or_wait, go_on_with, remarks)
    return TeamTalk(rehearsal, paper, read_or_wait, go_on_with, remarks, team)
