"""Drills: laying a long run against its pathway, and looking over a hundred thousand kept runs."""

from __future__ import annotations

import sqlite3
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

from chamberwise.engine.drill.aligning.align import align
from chamberwise.engine.drill.coverage.plan import plan
from chamberwise.engine.drill.entries import Ending
from chamberwise.engine.drill.measures.gates import Result
from chamberwise.engine.drill.measures.measured import measure
from chamberwise.engine.drill.remembering.remembered import Remembered, remember
from chamberwise.engine.drill.run import Run
from chamberwise.engine.exploration.explore import explore
from chamberwise.engine.store.runs import Runs
from chamberwise.engine.store.runs_progress import progress_of
from chamberwise.engine.store.runs_rows import RESULTS, act_row, moment, result_row
from chamberwise.exports.progress.extract import progress_content
from chamberwise.exports.progress.text import progress_text

from tests.bench.measure import Row
from tests.conformance.driver import RUPTURE, library
from tests.support.by_the_book import doings, drilled

MANY = 100_000
BEGAN = datetime(2020, 1, 1, tzinfo=UTC)


def rows() -> list[Row]:
    """Measure in this process; the reference is the same for no work at all, or plain reading."""
    return [*_aligning(), *_planning(), *_looking_over()]


def _best(work: Callable[[], object], times: int = 5) -> float:
    best = float("inf")
    for _ in range(times):
        start = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - start)
    return best


def faulty_run() -> Run:
    """Return a run of sixty doings with eight departures of every kind."""
    script = list(doings()[:64])
    for place in (44, 31, 23, 12, 6):
        del script[place]
    script[25], script[26] = script[26], script[25]
    script.insert(40, "enlarge-main-wound")
    return drilled(script[:60], Ending.STOP_RULE)


def _aligning() -> list[Row]:
    by_the_book = drilled(list(doings()[:60]))
    faulty = faulty_run()
    plain = _best(lambda: align(library(), by_the_book))
    hard = _best(lambda: align(library(), faulty))
    whole = _best(lambda: measure(library(), faulty))
    reference = f"the same without a fault {plain * 1000:.0f} ms"
    return [
        Row("align a run of 60", f"{hard * 1000:.0f} ms", reference, hard / plain, "under 100 ms"),
        Row("measure it whole", f"{whole * 1000:.0f} ms", reference, whole / plain, "under 1 s"),
    ]


def _planning() -> list[Row]:
    every = _best(lambda: explore(library(), RUPTURE), 2)
    taken = _best(lambda: plan(library(), RUPTURE), 2)
    reference = f"every state once {every:.1f} s"
    return [Row("plan drills", f"{taken:.1f} s", reference, taken / every, "under 2 s")]


def many_runs(path: Path, many: int = MANY) -> None:
    """Fill a store with invented runs, one an hour."""
    kept = remember(measure(library(), drilled(list(doings()[:16]))), "nucleus")
    results = list(Result)
    Runs(path).close()
    database = sqlite3.connect(path)
    with database:
        runs = [_nth(kept, number, results[number * 7 % 3]) for number in range(many)]
        stamps = [(number, moment(run.on)) for number, run in enumerate(runs, 1)]
        database.executemany("INSERT INTO runs VALUES (?, ?)", stamps)
        database.executemany(RESULTS, [result_row(n, run) for n, run in enumerate(runs, 1)])
        database.executemany(
            "INSERT INTO acts VALUES (?, ?, ?, ?, ?, ?, ?)",
            [
                act_row(number, place, act)
                for number, run in enumerate(runs, 1)
                for place, act in enumerate(run.acts)
            ],
        )
    database.close()


def _nth(kept: Remembered, number: int, result: Result) -> Remembered:
    return replace(kept, on=BEGAN + timedelta(hours=number / 2), seed=number, result=result)


def look_over(path: Path) -> str:
    """Open a store and tell progress, plots and all."""
    runs = Runs(path, to_read=True)
    found = progress_of(runs, RUPTURE, BEGAN + timedelta(days=2400))
    runs.close()
    return progress_text(progress_content(library(), found, "#+."))


def _looking_over() -> list[Row]:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "drills.db"
        many_runs(path)
        database = sqlite3.connect(path)
        reading = _best(lambda: database.execute("SELECT began, result FROM results").fetchall())
        database.close()
        taken = _best(lambda: look_over(path))
    reference = f"read two columns of as many {reading * 1000:.0f} ms"
    return [
        Row(
            "open and plot 100,000 runs",
            f"{taken * 1000:.0f} ms",
            reference,
            taken / reading,
            "under 1 s",
        )
    ]
