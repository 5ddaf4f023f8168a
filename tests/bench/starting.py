"""How long a command takes from cold, against the bare interpreter."""

from __future__ import annotations

import sys

from tests.bench.measure import Row, seconds

RUN = [sys.executable, "-m", "chamberwise.tui.command.main"]
BARE = [sys.executable, "-c", "pass"]


def rows() -> list[Row]:
    """Measure the version, the list and the check of the whole library."""
    bare = seconds(BARE)
    wanted = (
        ("--version", ["--version"], "under 0.1 s"),
        ("list", ["list"], ""),
        ("check, whole library", ["check"], "under 0.5 s"),
    )
    found = []
    for name, words, aim in wanted:
        took = seconds([*RUN, *words])
        reference = f"bare interpreter {bare * 1000:.0f} ms"
        found.append(Row(name, f"{took * 1000:.0f} ms", reference, took / bare, aim))
    return found
