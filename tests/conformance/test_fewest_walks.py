"""Fewest walks over every arrow, on published graphs, and against brute force.

Ammann and Offutt, Introduction to Software Testing, 2nd edition, Fig. 7.10, and the graph of their
lecture slides: arrows read; the fewest walks over every arrow computed with a second program.
Thimbleby, The directed Chinese Postman Problem, Software: Practice and Experience 33 (2003):
the arcs as in public ports, the optimal tour of 10: read.
"""

from __future__ import annotations

from itertools import combinations_with_replacement

import pytest
from chamberwise.engine.drill.coverage.fewest import Fewest, fewest_walks, shortest_tour
from hypothesis import assume, given
from hypothesis import strategies as st

BOOK = [(1, 2), (1, 5), (2, 3), (2, 6), (3, 4), (4, 2), (5, 5), (5, 7), (6, 7)]
SLIDES = [(0, 1), (0, 2), (1, 2), (2, 3), (2, 4), (3, 6), (4, 5), (4, 6), (5, 4)]
POSTMAN = [(0, 1), (0, 2), (1, 2), (1, 3), (2, 3), (3, 0)]


def test_the_graph_of_the_book() -> None:
    assert fewest_walks(BOOK, range(len(BOOK)), 1, 7) == Fewest(walks=2, arrows=9)


def test_the_graph_of_the_slides() -> None:
    assert fewest_walks(SLIDES, range(len(SLIDES)), 0, 6) == Fewest(walks=2, arrows=9)


def test_the_postmans_tour() -> None:
    assert shortest_tour(POSTMAN) == 10


def test_an_arrow_that_lies_on_no_walk_is_said() -> None:
    with pytest.raises(ValueError, match="lies on no walk"):
        fewest_walks([(0, 1), (2, 1)], [1], 0, 1)


def test_what_is_not_needed_is_not_walked() -> None:
    assert fewest_walks(BOOK, [0], 1, 7) == Fewest(walks=1, arrows=3)
    assert fewest_walks(BOOK, [], 1, 7) == Fewest(walks=0, arrows=0)


ARROWS = st.lists(
    st.tuples(st.integers(0, 3), st.integers(1, 4)).filter(lambda pair: pair[0] < pair[1]),
    min_size=1,
    max_size=6,
    unique=True,
)


@given(ARROWS, st.data())
def test_no_fewer_walks_would_do(arrows: list[tuple[int, int]], data: st.DataObject) -> None:
    """Against every set of walks of an acyclic graph from 0 to 4."""
    walks = list(_walks(arrows, (), 0))
    on_some = [n for n in range(len(arrows)) if any(n in walk for walk in walks)]
    assume(on_some)
    needed = data.draw(st.sets(st.sampled_from(on_some), min_size=1))
    fewest = next(
        many
        for many in range(1, len(needed) + 1)
        if any(
            needed <= {n for walk in chosen for n in walk}
            for chosen in combinations_with_replacement(walks, many)
        )
    )
    assert fewest_walks(arrows, needed, 0, 4).walks == fewest


def _walks(
    arrows: list[tuple[int, int]], so_far: tuple[int, ...], at: int
) -> list[tuple[int, ...]]:
    if at == 4:
        return [so_far]
    return [
        walk
        for number, (start, to) in enumerate(arrows)
        if start == at
        for walk in _walks(arrows, (*so_far, number), to)
    ]
