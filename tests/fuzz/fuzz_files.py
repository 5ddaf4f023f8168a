"""A long, repeatable fuzz of reading, checking and walking.

`python -m tests.fuzz.fuzz_files --count 100000 --seed 1` prints the seed of everything that falls;
`--count 1 --seed THAT` shows it again while the files it damages stay the same. `--keep` keeps it.
"""

from __future__ import annotations

import argparse
import sys
import time
import traceback
from dataclasses import dataclass
from pathlib import Path
from random import Random

from chamberwise.engine.reading.library import File, load_library

from tests.fuzz.judging import judge, read_bytes
from tests.fuzz.mutating import mutated

ROOT = Path(__file__).parents[2]
OWN, SHIPPED = ROOT / "tests" / "library", ROOT / "protocols"
ONE_SHIPPED_IN = 50
"""A shipped pathway takes far longer to check than one of the tests' own."""


@dataclass(slots=True)
class Case:
    """One damaged file among good ones, all drawn from a seed."""

    seed: int
    shown: str = ""
    data: bytes = b""

    def is_clean(self, libraries: list[list[File]]) -> bool:
        """Damage a file, sometimes two, and judge it. Raises whatever falls."""
        random = Random(self.seed)
        files = list(libraries[1] if random.randrange(ONE_SHIPPED_IN) == 0 else libraries[0])
        for _ in range(1 if random.random() < 0.8 else 2):
            place = random.randrange(len(files))
            self.shown = files[place].shown_as
            self.data = mutated(files[place].text or "a: b\n", random)
            files[place] = read_bytes(self.data, self.shown)
        return not judge(files, self.shown, random)

    def keep(self, folder: Path) -> None:
        """Write the damaged file."""
        folder.mkdir(parents=True, exist_ok=True)
        (folder / f"{self.seed}-{Path(self.shown).name}").write_bytes(self.data)


def main() -> int:
    """Run so many cases and print what falls and how long the slowest took."""
    arguments = _arguments()
    libraries = [list(load_library(folder).files.values()) for folder in (OWN, SHIPPED)]
    done = fell = clean = 0
    slowest, began = (0.0, 0), time.monotonic()
    for seed in range(arguments.seed, arguments.seed + arguments.count):
        before, case = time.monotonic(), Case(seed)
        if before - began > arguments.seconds:
            break
        try:
            clean += case.is_clean(libraries)
        except Exception:
            fell += 1
            print(f"seed {seed}, {case.shown}\n{traceback.format_exc(limit=-4)}", flush=True)
            if arguments.keep:
                case.keep(arguments.keep)
        done += 1
        slowest = max(slowest, (time.monotonic() - before, seed))
    took = time.monotonic() - began
    print(f"{done} cases in {took:.0f} s: {fell} fell, {clean} clean", end="; ")
    print(f"slowest {slowest[0]:.1f} s, seed {slowest[1]}")
    return 1 if fell else 0


def _arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="fuzz_files")
    parser.add_argument("--count", type=int, default=10_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--keep", type=Path, help="a folder for the files that made it fall")
    parser.add_argument("--seconds", type=float, default=float("inf"), help="stop after so long")
    return parser.parse_args()


if __name__ == "__main__":
    sys.exit(main())
