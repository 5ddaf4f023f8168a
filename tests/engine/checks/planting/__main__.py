"""Plant every fault at every place: `python -m tests.engine.checks.planting [FOLDER] [EVERY]`.

FOLDER is a library, left out: that of the tests; of EVERY so many faults one is planted.
"""

from __future__ import annotations

import sys
from collections import Counter
from itertools import islice
from pathlib import Path

from tests.engine.checks.planting.everything import library, planted


def main(arguments: list[str]) -> int:
    """Print every fault that is not told as it must be, then the numbers."""
    own = Path(__file__).parents[3] / "library"
    folder = Path(arguments[0]) if arguments else own
    every = int(arguments[1]) if len(arguments) > 1 else 1
    told: Counter[str] = Counter()
    missed: Counter[str] = Counter()
    for each in islice(planted(library(folder)), 0, None, every):
        found = each.missed()
        told[each.fault.kind] += 1
        if found:
            missed[each.fault.kind] += 1
            print(found, flush=True)
    for kind, number in sorted(told.items()):
        print(f"{kind}: {number} planted, {missed[kind]} missed")
    print(f"{told.total()} planted, {missed.total()} missed")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
