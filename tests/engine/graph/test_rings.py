"""Whether arrows go round, against following every path of small graphs."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import product

import pytest
from chamberwise.engine.graph.rings import has_ring
from hypothesis import given
from hypothesis import strategies as st

NAMES = "abcdef"


def comes_round(arrows: Mapping[str, list[str]]) -> bool:
    """By the definition: from some step, some path of arrows leads back to it."""

    def leads(start: str, end: str, passed: frozenset[str]) -> bool:
        return any(
            target == end or (target not in passed and leads(target, end, passed | {target}))
            for target in arrows.get(start, ())
        )

    return any(leads(start, start, frozenset()) for start in arrows)


steps = st.sampled_from(NAMES)
graphs = st.dictionaries(steps, st.lists(steps, max_size=3), max_size=len(NAMES))


@given(graphs)
def test_a_ring_is_seen_where_some_path_comes_round(arrows: dict[str, list[str]]) -> None:
    assert has_ring(arrows) == comes_round(arrows)


def test_every_graph_of_three_steps() -> None:
    """All 512 of them; 25 have no ring, as there are 25 acyclic graphs of three named steps."""
    names = NAMES[:3]
    without = 0
    for chosen in product([False, True], repeat=len(names) ** 2):
        pairs = [
            pair for pair, is_there in zip(product(names, names), chosen, strict=True) if is_there
        ]
        arrows = {name: [end for start, end in pairs if start == name] for name in names}
        assert has_ring(arrows) == comes_round(arrows)
        without += not has_ring(arrows)
    assert without == 25


@given(graphs, st.permutations(NAMES))
def test_the_order_of_steps_and_of_arrows_makes_no_odds(
    arrows: dict[str, list[str]], order: list[str]
) -> None:
    turned = {name: arrows[name][::-1] for name in order if name in arrows}
    assert has_ring(turned) == has_ring(arrows)


@given(st.dictionaries(steps, st.lists(steps, max_size=3)))
def test_arrows_that_only_lead_onward_never_come_round(arrows: dict[str, list[str]]) -> None:
    onward = {name: [each for each in ends if each > name] for name, ends in arrows.items()}
    assert not has_ring(onward)


@pytest.mark.parametrize(
    ("arrows", "expected"),
    [
        ({}, False),
        ({"a": []}, False),
        ({"a": ["a"]}, True),
        ({"a": ["b", "b"]}, False),
        ({"a": ["never named"]}, False),
        ({"a": ["b"], "c": ["d"], "d": ["c"]}, True),
    ],
)
def test_small_ones(arrows: dict[str, list[str]], expected: bool) -> None:
    assert has_ring(arrows) is expected


def test_a_long_way_round_is_no_matter() -> None:
    line = {str(number): [str(number + 1)] for number in range(20_000)}
    assert not has_ring(line)
    assert has_ring({**line, "20000": ["0"]})
