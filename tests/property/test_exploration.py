"""What is explored is what `advance` walks: neither a state nor a move more, nor one less."""

from __future__ import annotations

from unittest.mock import patch

from chamberwise.engine.exploration import explore as exploring
from chamberwise.engine.meaning.advance import CameBack, advance, begin, moves, passage
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Handover
from hypothesis import given

from tests.support.mapping import Map
from tests.support.strategies import libraries, picks
from tests.support.walking import everything, move_name, named_move, passages, random_walk

any_library = libraries() | libraries(tame=False)


@given(any_library, picks)
def test_every_walk_stays_inside_the_exploration(library: Library, chosen: list[int]) -> None:
    explored = Map(library, "p0")
    for made in passages(library, "p0", chosen):
        assert explored.covers(made.state)


@given(any_library)
def test_every_state_there_is_was_explored(library: Library) -> None:
    explored = Map(library, "p0")
    for state in everything(library, "p0", 400).onward:
        assert explored.covers(state)


@given(any_library)
def test_every_explored_state_can_be_walked_to(library: Library) -> None:
    explored = Map(library, "p0")
    for number in range(len(explored.found)):
        if explored.settled(number) == number:
            replayed(library, explored, number)


def replayed(library: Library, explored: Map, number: int) -> State:
    """Return the state that the way to an explored state leads to, by `advance`."""
    made = begin(library, "p0")
    for place, move in explored.found.way_to(number):
        assert made.state.place == place
        made = passage(library, made.state, named_move(move))
    ended = [each.outcome for each in made.silent if isinstance(each, CameBack)]
    assert explored.agree(number, made.state) or explored.place(number) in ended
    return made.state


@given(any_library)
def test_every_explored_move_can_be_made_and_leads_to_the_same(library: Library) -> None:
    explored = Map(library, "p0")
    for number in range(len(explored.found)):
        edges = explored.edges(number)
        if not edges or edges[0][0] is None:
            continue
        state = replayed(library, explored, number)
        assert [name for name, _ in edges] == [move_name(move) for move in moves(library, state)]
        for name, there in edges:
            assert _same(explored, there, state, name or "")


def _same(explored: Map, there: int, state: State, name: str) -> bool:
    """Whether a move leads where an edge leads, up to the outcome of a pathway that comes back."""
    made = passage(explored.library, state, named_move(name))
    arrived = explored.settled(there)
    if arrived is None:
        return not moves(explored.library, made.state)
    came_back = next((each for each in made.silent if isinstance(each, CameBack)), None)
    if came_back:
        return explored.place(arrived) == came_back.outcome
    return explored.agree(arrived, made.state)


@given(any_library, picks)
def test_a_handover_comes_back_wherever_it_was_explored_to(
    library: Library, chosen: list[int]
) -> None:
    explored = Map(library, "p0")
    at_handovers: dict[Place, list[int]] = {}
    for number in range(len(explored.found)):
        at_handovers.setdefault(explored.place(number), []).append(number)
    for leg in random_walk(library, "p0", chosen):
        for event in leg.made.silent:
            if isinstance(event, CameBack) and len(leg.before.way_back) == 1:
                targets = {
                    explored.place(there)
                    for number in at_handovers[event.handover]
                    for there in explored.found.leads_to[number]
                }
                assert targets, "a walk came back to a handover that leads nowhere"


@given(any_library)
def test_forgetting_what_is_dead_changes_nothing_that_is_offered(library: Library) -> None:
    reduced = Map(library, "p0")
    with patch.object(exploring, "mark_live"):
        whole = Map(library, "p0")
    assert len(reduced.found) <= len(whole.found)
    assert _offered(reduced) == _offered(whole)
    assert _undecided(reduced) == _undecided(whole)


def _offered(explored: Map) -> set[tuple[Place, tuple[str | None, ...]]]:
    return {
        (explored.place(number), tuple(name for name, _ in explored.edges(number)))
        for number in range(len(explored.found))
    }


def _undecided(explored: Map) -> set[Place]:
    return {explored.place(number) for number in explored.found.undecided}


@given(libraries(most_pathways=1) | libraries(tame=False, most_pathways=1))
def test_forgetting_what_is_dead_leaves_the_shortest_way_to_every_step(library: Library) -> None:
    reduced = Map(library, "p0")
    with patch.object(exploring, "mark_live"):
        whole = Map(library, "p0")
    assert _distances(reduced) == _distances(whole)
    for place, distance in _distances(reduced).items():
        nearest = min(
            number for number in range(len(reduced.found)) if reduced.place(number) == place
        )
        assert _arrows(reduced, nearest) == distance


def _distances(explored: Map) -> dict[Place, int]:
    front, distance = [0], 0
    met, nearest = {0}, {explored.place(0): 0}
    while front:
        distance += 1
        following = [each for number in front for each in explored.found.leads_to[number]]
        front = [each for each in dict.fromkeys(following) if each not in met]
        met.update(front)
        for each in front:
            nearest.setdefault(explored.place(each), distance)
    return nearest


def _arrows(explored: Map, number: int) -> int:
    count = 0
    while number:
        number, count = explored.found.parents[number][0], count + 1
    return count


@given(any_library)
def test_the_way_to_a_state_names_handovers_too(library: Library) -> None:
    explored = Map(library, "p0")
    for number in range(len(explored.found)):
        state = begin(library, "p0").state
        for place, move in explored.found.way_to(number):
            is_handover = isinstance(library.step(place), Handover)
            assert not is_handover or move == "done"
            state = advance(library, state, named_move(move))
