"""What a store of runs holds, read past the program that wrote it."""

from __future__ import annotations

import sqlite3
from pathlib import Path

from chamberwise.engine.drill.codec import decode
from chamberwise.engine.drill.entries import Entry


def journal_of(path: Path, run: int) -> tuple[Entry, ...]:
    """Return the entries of a run, oldest first."""
    database = sqlite3.connect(path)
    told = "SELECT entry FROM events WHERE run = ? ORDER BY number"
    lines = [line for (line,) in database.execute(told, (run,))]
    database.close()
    return tuple(decode(line) for line in lines)
