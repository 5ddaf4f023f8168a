"""Limits of shares, against two libraries and published figures."""

from __future__ import annotations

import pytest
from chamberwise.engine.drill.measures.proportion import Share, at_most, clopper_pearson, wilson
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binom, binomtest
from statsmodels.stats.proportion import proportion_confint


@st.composite
def counts(draw: st.DrawFn) -> tuple[int, int]:
    of = draw(st.integers(1, 400))
    return draw(st.integers(0, of)), of


@given(counts())
def test_the_exact_interval_is_scipys(pair: tuple[int, int]) -> None:
    count, of = pair
    expected = binomtest(count, of).proportion_ci(0.95, method="exact")
    found = clopper_pearson(count, of)
    assert (found.low, found.high) == pytest.approx((expected.low, expected.high), abs=1e-7)


@given(counts())
def test_wilsons_interval_is_statsmodels(pair: tuple[int, int]) -> None:
    low, high = proportion_confint(*pair, method="wilson")
    found = wilson(*pair)
    assert (found.low, found.high) == pytest.approx((low, high), abs=1e-9)


@pytest.mark.parametrize("rate", [1e-5, 0.01, 0.333, 0.5, 0.9])
@pytest.mark.parametrize("count", [0, 3, 33_333, 50_000, 99_999])
def test_very_many_are_told_as_exactly(count: int, rate: float) -> None:
    assert at_most(count, 100_000, rate) == pytest.approx(binom.cdf(count, 100_000, rate), abs=1e-9)


@given(counts(), st.floats(0.001, 0.999))
def test_the_binomial_tail_is_scipys(pair: tuple[int, int], rate: float) -> None:
    assert at_most(*pair, rate) == pytest.approx(binom.cdf(*pair, rate), abs=1e-9)


@pytest.mark.parametrize(
    ("count", "of", "low", "high"),
    [
        (81, 263, 0.2553, 0.3662),
        (15, 148, 0.0624, 0.1605),
        (0, 20, 0.0, 0.1611),
        (1, 29, 0.0061, 0.1718),
    ],
)
def test_newcombes_published_examples(count: int, of: int, low: float, high: float) -> None:
    """Newcombe, Statistics in Medicine 17 (1998) 857-872, table I, score method: memory."""
    found = wilson(count, of)
    assert (found.low, found.high) == pytest.approx((low, high), abs=5e-5)


@pytest.mark.parametrize(
    ("count", "of", "low", "high"),
    [
        (81, 263, 0.2527, 0.3676),
        (15, 148, 0.0578, 0.1617),
        (0, 20, 0.0, 0.1684),
        (1, 29, 0.0009, 0.1776),
    ],
)
def test_newcombes_published_exact_limits(count: int, of: int, low: float, high: float) -> None:
    """The same table, Clopper-Pearson: memory."""
    found = clopper_pearson(count, of)
    assert (found.low, found.high) == pytest.approx((low, high), abs=5e-5)


def test_ten_of_ten_still_allow_a_true_share_of_seven_in_ten() -> None:
    """Computed for the evidence notes of the drill: 72 %; nine of ten: 60 to 98; none of 20: 16."""
    assert wilson(10, 10).low == pytest.approx(0.72, abs=0.005)
    assert (wilson(9, 10).low, wilson(9, 10).high) == pytest.approx((0.60, 0.98), abs=0.005)
    assert wilson(0, 20).high == pytest.approx(0.16, abs=0.005)


def test_few_runs_tell_nothing_and_say_how_many_more() -> None:
    assert not Share(1, 2).tells
    assert not Share(0, 0).tells
    share = Share(2, 4)
    assert wilson(4 + share.more_needed, 2 * (4 + share.more_needed)).width < 0.4
    more = share.more_needed
    assert Share(2 + more // 2, 4 + more).tells
    assert Share(20, 20).more_needed == 0


def test_nothing_of_nothing_may_be_anything() -> None:
    assert (clopper_pearson(0, 1).low, wilson(0, 0).width) == (0.0, 1.0)
