"""Kaplan and Meier's curve, against a reference library and published figures."""

from __future__ import annotations

import warnings

import pytest
from chamberwise.engine.drill.measures.surviving import Duration, curve, median
from hypothesis import given
from hypothesis import strategies as st

REMISSION = "6+ 6 6 6 7 9+ 10+ 10 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+"
"""Weeks of remission under 6-mercaptopurine; a plus was censored (Freireich and others 1963)."""


def durations(weeks: str) -> list[Duration]:
    return [Duration(float(each.rstrip("+")), "+" not in each) for each in weeks.split()]


def test_the_published_remission_times() -> None:
    """Curve as printed in textbooks, as in Cox and Oakes (1984): memory; median 23 weeks."""
    falls = [(fall.seconds, round(fall.not_yet, 3)) for fall in curve(durations(REMISSION))]
    assert falls == [
        (6, 0.857),
        (7, 0.807),
        (10, 0.753),
        (13, 0.690),
        (16, 0.627),
        (22, 0.538),
        (23, 0.448),
    ]
    assert median(durations(REMISSION)) == 23


@given(st.lists(st.tuples(st.integers(1, 30), st.booleans()), min_size=1, max_size=40))
def test_a_reference_library_draws_the_same_curve(pairs: list[tuple[int, bool]]) -> None:
    from lifelines import KaplanMeierFitter

    given_durations = [Duration(seconds, happened) for seconds, happened in pairs]
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        fitter = KaplanMeierFitter().fit([s for s, _ in pairs], [h for _, h in pairs])
    table = fitter.survival_function_["KM_estimate"]
    for fall in curve(given_durations):
        assert fall.not_yet == pytest.approx(table.loc[fall.seconds], abs=1e-9)
    expected = fitter.median_survival_time_
    found = median(given_durations)
    assert (found if found is not None else float("inf")) == pytest.approx(expected)


def test_what_never_happened_has_no_median_and_is_not_left_out() -> None:
    assert median([Duration(10, False), Duration(20, False)]) is None
    assert median([Duration(5, True), Duration(60, False), Duration(60, False)]) is None
    assert curve([]) == ()
