"""Prime paths against published graphs and against their definition, and loops against walks.

The definition and both graphs are of Ammann and Offutt, Introduction to Software Testing, 2nd
edition: figure 7.10, its arrows read, that it has 32 simple paths of which 8 are prime from memory;
figure 7.2 (exercise 7.2.2-6), read as two public sheets of answers give it, with the same fourteen.
"""

from __future__ import annotations

from itertools import pairwise

import pytest
from chamberwise.engine.drill.coverage.loops import Loops, loops
from chamberwise.engine.drill.coverage.prime_paths import (
    TooManyPathsError,
    prime_paths,
    simple_paths,
)
from chamberwise.engine.drill.coverage.replaying import steps_of
from chamberwise.engine.model.library import Library, Place
from hypothesis import given
from hypothesis import strategies as st

from tests.conformance.driver import library as shipped
from tests.support.build import act, ask, bounded, do, end, finding, library, pathway

Graph = dict[int, list[int]]

LOOPS_AND_WAYS = {0: [1, 4], 1: [2, 5], 2: [3], 3: [1], 4: [4, 6], 5: [6], 6: []}
FIGURE_7_2 = {
    1: [4, 5],
    2: [5],
    3: [6, 7],
    4: [8],
    5: [8, 9],
    6: [2, 10],
    7: [10],
    8: [],
    9: [6],
    10: [],
}


def test_the_graph_with_thirty_two_simple_paths_has_eight_prime_ones() -> None:
    assert len(list(simple_paths(LOOPS_AND_WAYS))) == 32
    assert set(prime_paths(LOOPS_AND_WAYS)) == {
        (4, 4),
        (0, 4, 6),
        (0, 1, 2, 3),
        (0, 1, 5, 6),
        (1, 2, 3, 1),
        (2, 3, 1, 2),
        (3, 1, 2, 3),
        (2, 3, 1, 5, 6),
    }


def test_the_graph_of_the_exercise_has_the_fourteen_of_its_answer() -> None:
    assert set(prime_paths(FIGURE_7_2)) == {
        (1, 4, 8),
        (1, 5, 8),
        (1, 5, 9, 6, 2),
        (1, 5, 9, 6, 10),
        (2, 5, 9, 6, 2),
        (2, 5, 9, 6, 10),
        (3, 6, 2, 5, 8),
        (3, 6, 2, 5, 9),
        (3, 6, 10),
        (3, 7, 10),
        (5, 9, 6, 2, 5),
        (6, 2, 5, 9, 6),
        (9, 6, 2, 5, 8),
        (9, 6, 2, 5, 9),
    }


def by_definition(graph: Graph) -> set[tuple[int, ...]]:
    """Return the simple paths that are no part of another, built arrow by arrow."""
    found = {(node,) for node in graph}
    growing = set(found)
    while growing:
        longer = {(*path, to) for path in growing for to in graph[path[-1]]}
        growing = {path for path in longer if is_simple(path)}
        found |= growing
    return {path for path in found if not any(is_part(path, other) for other in found)}


def is_simple(path: tuple[int, ...]) -> bool:
    inside = path[1:] if path[0] == path[-1] else path
    return len(set(inside)) == len(inside)


def is_part(path: tuple[int, ...], other: tuple[int, ...]) -> bool:
    long = len(path)
    return long < len(other) and any(
        other[at : at + long] == path for at in range(len(other) - long + 1)
    )


@st.composite
def graphs(draw: st.DrawFn) -> Graph:
    nodes = range(draw(st.integers(1, 5)))
    return {node: draw(st.lists(st.sampled_from(nodes), max_size=3)) for node in nodes}


@given(graphs())
def test_prime_paths_are_those_of_the_definition(graph: Graph) -> None:
    found = prime_paths(graph)
    assert len(found) == len(set(found))
    assert set(found) == by_definition(graph)


def test_more_paths_than_are_looked_at_are_said_to_be_too_many() -> None:
    every = {node: [to for to in range(12) if to != node] for node in range(12)}
    with pytest.raises(TooManyPathsError):
        prime_paths(every, most=10_000)


def around() -> Library:
    return library(
        pathway(
            "one",
            bounded(ask("look", "vitreous", none="close", present="clear"), 4, "give-up"),
            do("clear", "look", acts="cut", stale="vitreous"),
            end("close"),
            end("give-up"),
        ),
        findings=[finding("vitreous", "none present")],
        acts=[act("cut")],
    )


@pytest.mark.parametrize(
    ("answers", "walked", "again", "ways"),
    [
        (("none",), 0, 0, 0),
        (("present", "none"), 1, 0, 1),
        (("present", "present", "none"), 1, 1, 2),
    ],
)
def test_a_loop_is_walked_not_at_all_once_and_more_than_once(
    answers: tuple[str, ...], walked: int, again: int, ways: int
) -> None:
    of, look = around(), Place("one", "look")
    steps = steps_of(of, "one", [(look, name) for name in answers])
    assert steps.count(look) == len(answers)
    assert loops(of, [steps]) == Loops(1, walked, again, 2, ways)


def test_steps_of_a_shipped_walk_follow_the_arrows_of_its_pathway() -> None:
    from chamberwise.engine.drill.coverage.plan import plan
    from chamberwise.engine.graph.targets import targets

    of, entry = shipped(), "anterior-vitrectomy"
    for drill in plan(of, entry).drills:
        steps = steps_of(of, entry, drill.answers)
        assert steps[-1] == drill.ends_at
        for here, there in pairwise(steps):
            if here.pathway == there.pathway:
                assert there.step in {each.step for each in targets(of.step(here))}
