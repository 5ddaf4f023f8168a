"""Measuring whole processes: wall time and peak memory, best of several."""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the table. `ratio` is measured over reference, in the same run."""

    what: str
    measured: str
    reference: str
    ratio: float
    aim: str


def seconds(command: Sequence[str], times: int = 5) -> float:
    """Return the best wall time of a command, in seconds; its output is thrown away.

    Modules are compiled beforehand, as they are once installed.
    """
    best = float("inf")
    with tempfile.TemporaryDirectory() as compiled:
        environment = {**os.environ, "PYTHONPYCACHEPREFIX": compiled}
        environment.pop("PYTHONDONTWRITEBYTECODE", None)
        for _ in range(times + 1):
            start = time.perf_counter()
            subprocess.run(command, env=environment, capture_output=True, check=False)
            best = min(best, time.perf_counter() - start)
    return best


def peak_megabytes(command: Sequence[str]) -> float:
    """Return the peak resident memory of a command in MB, measured by a parent of its own."""
    script = (
        "import resource, subprocess, sys;"
        "subprocess.run(sys.argv[1:], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL);"
        "print(resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss)"
    )
    done = subprocess.run(
        [sys.executable, "-c", script, *command], capture_output=True, text=True, check=True
    )
    kilobytes = int(done.stdout)
    return kilobytes / (1024 if sys.platform != "darwin" else 1024 * 1024)


def show(rows: Sequence[Row]) -> str:
    """Return the rows as a table in plain text."""
    heads = ("what", "measured", "reference", "ratio", "aim")
    cells = [(row.what, row.measured, row.reference, f"{row.ratio:.1f}", row.aim) for row in rows]
    widths = [max(len(line[place]) for line in (heads, *cells)) for place in range(len(heads))]
    return "\n".join(
        "  ".join(cell.ljust(width) for cell, width in zip(line, widths, strict=True)).rstrip()
        for line in (heads, *cells)
    )
