"""Reading a line typed, or giving up waiting for it when the clock brings something."""

from __future__ import annotations

import os
import select
import sys

from chamberwise.engine.drill.entries import Milliseconds
from chamberwise.tui.line.drill_talk import WAITED


def read_or_wait(milliseconds: Milliseconds | None) -> str | None:
    """Return the next line, `WAITED` once time is up, `None` where there is no more.

    Where a terminal cannot be waited for, the line is waited for alone.
    """
    if milliseconds is not None and os.name == "posix":
        ready, _, _ = select.select([sys.stdin], [], [], milliseconds / 1000)
        if not ready:
            return WAITED
    line = sys.stdin.readline()
    return line.rstrip("\r\n") if line else None
