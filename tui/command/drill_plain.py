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
from chamberwise.tui.line.waiting import read_or_wait
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
    talk = DrillTalk(rehearsal, paper, read_or_wait, ready.go_on_with, remarks)
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
