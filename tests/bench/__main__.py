"""`python -m tests.bench`: speed and memory, each against a reference measured in the same run.

Reports and blocks nothing: clocks on shared machines lie, ratios lie less.
"""

from __future__ import annotations

import sys

from tests.bench import (
    briefing,
    checking,
    drilling,
    printing,
    proving,
    starting,
    walking,
    writing,
)
from tests.bench.measure import Row, show


def main(words: list[str]) -> int:
    """Run the benchmarks named, or all, and print one table."""
    benches = {
        "starting": starting.rows,
        "checking": checking.rows,
        "proving": proving.rows,
        "drilling": drilling.rows,
        "walking": walking.rows,
        "printing": printing.rows,
        "briefing": briefing.rows,
        "writing": writing.rows,
    }
    rows: list[Row] = []
    for name in words or benches:
        rows += benches[name]()
    print(show(rows))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
