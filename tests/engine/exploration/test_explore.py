"""Small pathways that once led an exploration astray, or might."""

from __future__ import annotations

import pytest
from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.exploration.explore import explore
from chamberwise.engine.exploration.explored import trapped
from chamberwise.engine.exploration.widest import widest
from chamberwise.engine.meaning.advance import advance, begin
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.library import Library, Place

from tests.support.build import (
    ask,
    bounded,
    branch,
    do,
    end,
    finding,
    hand_over,
    library,
    pathway,
    row,
)
from tests.support.walking import named_move

WOUND = finding("wound", "dry leaking")


@pytest.fixture
def nested() -> Library:
    """One comes back from two, two from three, and three goes on in four for good."""
    return library(
        pathway("one", hand_over("over", "two", done="close"), end("close")),
        pathway("two", do("fill", "on"), hand_over("on", "three", done="done"), end("done")),
        pathway(
            "three",
            ask("look", "wound", dry="done", leaking="leave"),
            hand_over("leave", "four"),
            end("done"),
        ),
        pathway("four", do("stitch", "done"), end("done")),
        findings=[WOUND],
    )


def replayed(library: Library, way: list[tuple[Place, str]]) -> State:
    state = begin(library, "one").state
    for place, move in way:
        assert state.place == place
        state = advance(library, state, named_move(move))
    return state


def test_the_way_into_what_was_handed_over_for_good_from_within(nested: Library) -> None:
    found = explore(nested, "one")
    numbers = [number for number in range(len(found)) if found.at_node(number).pathway == "four"]
    assert len(numbers) == 2
    for number in numbers:
        assert replayed(nested, found.way_to(number)).place == found.at_node(number)
    assert [move for _, move in found.way_to(numbers[-1])].count("done") == 5


def test_every_step_of_every_pathway_comes_up(nested: Library) -> None:
    found = explore(nested, "one")
    for name, each in nested.pathways.items():
        assert {step for step, _ in found.seen_in(name)} == set(each.steps)
    assert list(trapped(found)) == []


def test_an_entry_with_a_bound_that_no_arrow_comes_back_to() -> None:
    one = library(
        pathway(
            "one",
            bounded(ask("look", "wound", dry="close", leaking="close"), 1, "never"),
            do("never", "close"),
            end("close"),
        ),
        findings=[WOUND],
    )
    assert Place("one", "close") in widest(compiled(one, "one"))
    assert [name for name, _ in explore(one, "one").seen_in("one")] == ["look", "close"]


def test_what_is_learnt_over_there_is_known_after_the_return() -> None:
    two = library(
        pathway(
            "one",
            hand_over("over", "two", done="which"),
            branch("which", row("dry", wound="dry"), otherwise="leaks", not_known="unclear"),
            end("dry"),
            end("leaks"),
            end("unclear"),
        ),
        pathway("two", ask("look", "wound", dry="done", leaking="done"), end("done")),
        findings=[WOUND],
    )
    found = explore(two, "one")
    assert {"dry", "leaks", "unclear"} <= {name for name, _ in found.seen_in("one")}


def test_counts_begin_anew_with_every_handover() -> None:
    two = library(
        pathway(
            "one",
            bounded(hand_over("over", "two", done="over", stopped="close"), 2, "close"),
            end("close"),
        ),
        pathway(
            "two",
            bounded(ask("look", "wound", dry="done", leaking="press"), 2, "stopped"),
            do("press", "look", stale="wound"),
            end("done"),
            end("stopped"),
        ),
        findings=[WOUND],
    )
    found = explore(two, "one")
    assert not found.stopped
    longest = max(len(found.way_to(number)) for number in range(len(found)))
    assert longest <= 2 * (1 + 2 * 2)


def test_knowledge_that_passes_a_handover_by_is_kept() -> None:
    two = library(
        pathway(
            "one",
            ask("look", "depth", flat="over", deep="over"),
            hand_over("over", "two", done="which"),
            branch("which", row("flat", depth="flat"), otherwise="deep", not_known="unclear"),
            end("flat"),
            end("deep"),
            end("unclear"),
        ),
        pathway("two", ask("look", "wound", dry="done", leaking="done"), end("done")),
        findings=[WOUND, finding("depth", "flat deep")],
    )
    found = explore(two, "one")
    assert {"flat", "deep", "unclear"} <= {name for name, _ in found.seen_in("one")}
    inside = [number for number in range(len(found)) if found.at_node(number).pathway == "two"]
    assert len(inside) == 2  # once for all ways of entering: nothing of depth is read there
