"""Whether the place the command runs in can carry the screen program, or line mode it is."""

from __future__ import annotations

import os
import shutil
import sys

LEAST_COLUMNS = 60
LEAST_ROWS = 20
WIDEST = 80


def carries_screen() -> bool:
    """Whether every end is a terminal that can move its cursor, and it is large enough.

    The screen is painted on standard error, so that one counts as well.
    """
    if not all(stream.isatty() for stream in (sys.stdin, sys.stdout, sys.stderr)):
        return False
    if os.environ.get("TERM", "") in ("", "dumb", "unknown"):
        return False
    size = os.get_terminal_size(sys.stdout.fileno())
    if 0 in size:
        return True  # a terminal that does not know its size
    return size.columns >= LEAST_COLUMNS and size.lines >= LEAST_ROWS


def line_width() -> int:
    """Return the width that line mode wraps to."""
    return max(20, min(shutil.get_terminal_size().columns, WIDEST) - 2)


def wants_colour() -> bool:
    """Whether colour may be shown: NO_COLOR is unset or empty."""
    return not os.environ.get("NO_COLOR")
