"""Windows cover a length, overlap enough, and cut as little as brute force could."""

from __future__ import annotations

from itertools import pairwise, product

import pytest
from chamberwise.exports.tiling.windows import OVERLAP, Span, count, cut, windows
from hypothesis import given
from hypothesis import strategies as st

WINDOW = 186.0
lengths = st.integers(1, 900).map(float)
spans = st.lists(
    st.tuples(st.integers(0, 880), st.integers(1, 120)).map(
        lambda each: Span(float(each[0]), float(sum(each)))
    ),
    max_size=12,
)


@given(lengths, spans, st.sampled_from([186.0, 273.0]))
def test_they_cover_the_length_and_overlap(length: float, told: list[Span], wide: float) -> None:
    found = windows(length, wide, told)
    assert found[0].begins == 0
    assert found[-1].ends == length
    assert len(found) == count(length, wide)
    assert all(0 < each.ends - each.begins <= wide + 1e-6 for each in found)
    for one, other in pairwise(found):
        assert one.ends - other.begins == pytest.approx(OVERLAP)
        assert one.begins < other.begins


@given(lengths)
def test_no_fewer_windows_would_do(length: float) -> None:
    number = count(length, WINDOW)
    reach = WINDOW + (number - 2) * (WINDOW - OVERLAP)
    assert number == 1 or reach < length


@given(st.integers(400, 520).map(float), spans)
def test_nothing_cuts_less(length: float, told: list[Span]) -> None:
    """Three windows: every pair of ends at whole millimetres is tried."""
    if count(length, WINDOW) != 3:
        return
    found = windows(length, WINDOW, told)
    cuts = {float(place): cut(float(place), told) for place in range(int(length) + 1)}
    best = min(
        cuts[first] + cuts[second]
        for first, second in product(cuts, cuts)
        if first <= WINDOW
        and second - (first - OVERLAP) <= WINDOW
        and length - (second - OVERLAP) <= WINDOW
        and first - OVERLAP < second - OVERLAP
    )
    assert sum(cuts[each.ends] for each in found[:-1]) <= best


def test_room_to_spare_is_shared_where_nothing_is_in_the_way() -> None:
    first, second = windows(297.0, WINDOW, [])
    assert abs((first.ends - first.begins) - (second.ends - second.begins)) <= 1


def test_a_text_at_the_middle_is_left_whole() -> None:
    told = [Span(140.0, 160.0)]
    first, second = windows(297.0, WINDOW, told)
    assert first.ends >= 160 or second.begins <= 140
    assert cut(first.ends, told) == 0
