"""When rehearsal is current: the rule of the evidence notes of the drill, clause by clause."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest
from chamberwise.engine.drill.measures.gates import Result
from chamberwise.engine.drill.remembering.current import Lack, current
from chamberwise.engine.drill.remembering.remembered import Remembered
from chamberwise.engine.drill.spacing.grading import Grade
from chamberwise.engine.drill.spacing.scheduling import after

from tests.engine.store.test_runs import NOW, remembered

FIRST = replace(remembered(on=NOW - timedelta(days=9)), seed=1, result=Result.MET)
LAST = replace(remembered(on=NOW - timedelta(days=2)), seed=2, result=Result.MET)
FRESH = after(None, "stop", "nucleus", Grade.GOOD, NOW - timedelta(days=2))
OLD = after(None, "fill", "nucleus", Grade.AGAIN, NOW - timedelta(days=60))


def test_two_runs_met_one_with_an_inject_and_lately_are_current() -> None:
    found = current([FIRST, LAST], 1, [FRESH], NOW)
    assert (found.lacks, found.latest, found.weakest) == ((), LAST.on, FRESH)


@pytest.mark.parametrize(
    ("runs", "injects", "lack"),
    [
        ([], 0, Lack.RUNS),
        ([LAST], 1, Lack.RUNS),
        ([FIRST, replace(LAST, result=Result.LATE)], 1, Lack.MET),
        ([replace(FIRST, result=Result.NOT_YET), LAST], 1, Lack.MET),
        ([replace(FIRST, seed=2), LAST], 1, Lack.SEEDS),
        ([FIRST, LAST], 0, Lack.INJECT),
        ([FIRST, replace(LAST, on=NOW - timedelta(days=91))], 1, Lack.AGE),
    ],
)
def test_each_clause_alone_keeps_it_from_being_current(
    runs: list[Remembered], injects: int, lack: Lack
) -> None:
    assert current(runs, injects, [FRESH], NOW).lacks == (lack,)


def test_what_is_likely_forgotten_is_named() -> None:
    found = current([FIRST, LAST], 2, [FRESH, OLD], NOW)
    assert (found.lacks, found.weakest) == ((Lack.RECALL,), OLD)


def test_ninety_days_are_still_lately() -> None:
    last = replace(LAST, on=NOW - timedelta(days=90))
    assert current([replace(FIRST, on=NOW - timedelta(days=99)), last], 1, [], NOW).lacks == ()
