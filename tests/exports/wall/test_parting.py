"""Parting rows over sheets, against every way there is."""

from __future__ import annotations

from itertools import combinations, pairwise

from chamberwise.exports.wall.parting import Measured, parted
from hypothesis import given
from hypothesis import strategies as st

ROWS = st.lists(
    st.builds(Measured, st.integers(1, 9).map(float), st.integers(1, 6), st.booleans()),
    min_size=1,
    max_size=7,
)


@given(ROWS, st.integers(1, 4), st.integers(1, 14), st.booleans())
def test_it_is_as_even_as_any_way(
    rows: list[Measured], count: int, most: int, by_phase: bool
) -> None:
    starts = parted(rows, count, most, by_phase=by_phase)
    every = [each for each in ways(len(rows), count) if is_allowed(rows, each, most, by_phase)]
    if starts is None:
        assert not every
    else:
        assert starts in every
        assert highest(rows, starts) == min(highest(rows, each) for each in every)


def ways(rows: int, count: int) -> list[tuple[int, ...]]:
    return [(0, *inner) for many in range(count) for inner in combinations(range(1, rows), many)]


def groups(rows: list[Measured], starts: tuple[int, ...]) -> list[list[Measured]]:
    return [rows[start:end] for start, end in pairwise((*starts, len(rows)))]


def is_allowed(rows: list[Measured], starts: tuple[int, ...], most: int, by_phase: bool) -> bool:
    few = all(
        len(group) == 1 or sum(row.boxes for row in group) <= most for group in groups(rows, starts)
    )
    return few and (not by_phase or all(rows[start].opens for start in starts[1:]))


def highest(rows: list[Measured], starts: tuple[int, ...]) -> float:
    return max(sum(row.height for row in group) for group in groups(rows, starts))
