"""Cumulative sums, against published figures and an exact working out of every course."""

from __future__ import annotations

from collections import defaultdict

import pytest
from chamberwise.engine.drill.learning import cusum, lc_cusum
from chamberwise.engine.drill.learning.course import course
from chamberwise.engine.drill.learning.cusum import Cusum
from chamberwise.engine.drill.measures.gates import Result

MET, NOT_YET = Result.MET, Result.NOT_YET


def test_the_worked_figures_for_a_rate_of_five_against_ten_in_a_hundred() -> None:
    """Kestin's form: s .0724, limits 2.94 either way, 41 in a row. Formula: read; computed."""
    found = Cusum(0.05, 0.10, 0.10, 0.10)
    assert found.step == pytest.approx(0.0724, abs=5e-5)
    assert found.shown_unacceptable == pytest.approx(2.94, abs=0.005)
    assert found.shown_acceptable == pytest.approx(-2.94, abs=0.005)
    assert found.straight == 41


@pytest.mark.parametrize(("errors", "straight"), [(0.05, 55), (0.10, 41), (0.20, 26)])
def test_how_many_in_a_row_hangs_on_the_errors_allowed(errors: float, straight: int) -> None:
    assert Cusum(0.05, 0.10, errors, errors).straight == straight


def test_the_worked_figures_for_drills() -> None:
    found = cusum.USUAL
    assert found.step == pytest.approx(0.186, abs=5e-4)
    assert found.shown_unacceptable == pytest.approx(1.63, abs=0.005)
    assert found.straight == 9


@pytest.mark.parametrize(
    ("failing", "accepted"),
    [(0.05, 0.994), (0.10, 0.934), (0.20, 0.450), (0.30, 0.093), (0.40, 0.015)],
)
def test_how_often_a_true_rate_is_accepted(failing: float, accepted: float) -> None:
    """Computed for the evidence notes of the drill; here by going through every course at once."""
    sums, step = {0.0: 1.0}, cusum.USUAL.step
    done = 0.0
    for _ in range(400):
        onward: dict[float, float] = defaultdict(float)
        for total, chance in sums.items():
            for adds, how_likely in ((1 - step, failing), (-step, 1 - failing)):
                there = round(total + adds, 9)
                if there <= cusum.USUAL.shown_acceptable:
                    done += chance * how_likely
                elif there < cusum.USUAL.shown_unacceptable:
                    onward[there] += chance * how_likely
        sums = onward
    assert done == pytest.approx(accepted, abs=0.002)


def test_the_weights_of_the_sum_that_starts_at_not_yet() -> None:
    found = lc_cusum.USUAL
    assert (found.success, found.failure) == pytest.approx((0.251, -1.099), abs=5e-4)
    assert found.more_needed(0.0) == 10


@pytest.mark.parametrize(
    ("failing", "runs", "signalled"),
    [(0.30, 12, 0.045), (0.30, 20, 0.122), (0.05, 12, 0.659), (0.05, 20, 0.921)],
)
def test_how_often_it_signals(failing: float, runs: int, signalled: float) -> None:
    """Computed for the evidence notes of the drill; here by going through every course at once."""
    sums, done = {0.0: 1.0}, 0.0
    for _ in range(runs):
        onward: dict[float, float] = defaultdict(float)
        for total, chance in sums.items():
            for failed, how_likely in ((True, failing), (False, 1 - failing)):
                adds = lc_cusum.USUAL.failure if failed else lc_cusum.USUAL.success
                there = round(max(0.0, total + adds), 9)
                if lc_cusum.USUAL.signals(there):
                    done += chance * how_likely
                else:
                    onward[there] += chance * how_likely
        sums = onward
    assert done == pytest.approx(signalled, abs=0.002)


def test_a_bad_beginning_is_not_held_against_anybody() -> None:
    assert lc_cusum.USUAL.sums([True] * 50)[-1] == 0.0
    assert course([NOT_YET] * 50 + [MET] * 10).has_signalled


def test_after_the_signal_it_is_watched_for_falling_back() -> None:
    found = course([MET] * 10 + [NOT_YET] * 3)
    assert found.has_signalled
    assert len(found.towards) == 10
    assert found.fell_back
    assert not course([MET] * 10 + [NOT_YET]).fell_back


def test_late_is_not_met() -> None:
    assert course([Result.LATE]).towards == (0.0,)


def test_too_few_runs_say_how_many_more() -> None:
    assert (course([]).has_signalled, course([]).more_needed) == (False, 10)
    assert course([MET] * 4).more_needed == 6


def test_the_sum_begins_anew_once_it_has_shown_something() -> None:
    sums = cusum.USUAL.sums([False] * 12)
    assert sums[8] <= cusum.USUAL.shown_acceptable
    assert sums[9] == pytest.approx(-cusum.USUAL.step)
