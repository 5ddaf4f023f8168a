"""The walk that tells two versions apart is a walk of both by `advance`, and a shortest one."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.comparing.behaviour import (
    Alike,
    Apart,
    behaviour,
    noticed_alike,
)
from chamberwise.engine.comparing.change import Rating, gravest
from chamberwise.engine.comparing.changes import changes_of_pathway, changes_of_shared
from chamberwise.engine.comparing.names.calling import in_new_names
from chamberwise.engine.comparing.names.told_again import told_again
from chamberwise.engine.meaning.advance import advance, begin, moves
from chamberwise.engine.meaning.state import Answered, Move, State
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Question
from chamberwise.engine.mutants.all_mutants import mutants
from chamberwise.engine.mutants.mutant import Mutant
from hypothesis import given
from hypothesis import strategies as st

from tests.property.test_sameness import is_walkable
from tests.support.strategies import libraries

MOST = 600


def walked(library: Library, made: Sequence[Move]) -> State:
    state = begin(library, "p0").state
    for move in made:
        state = advance(library, state, move)
    return state


def met_alike(old: Library, one: State, new: Library, other: State) -> bool:
    """Whether the same is met at two states, by `advance` alone."""
    before, after = old.step(one.place), new.step(other.place)
    return noticed_alike(before, after) and set(keyed(old, one)) == set(keyed(new, other))


def keyed(library: Library, state: State) -> dict[object, Move]:
    """Return the moves of a state by the values that an answer stands for."""
    step = library.step(state.place)
    found: dict[object, Move] = {}
    for move in moves(library, state):
        key: object = "done"
        if isinstance(step, Question) and isinstance(move, Answered):
            key = next(frozenset(each.means) for each in step.answers if each.id == move.answer)
        found[key] = move
    return found


def shortest(old: Library, new: Library) -> int | None:
    """Return how many moves a shortest walk that tells them apart has; -1 where there are many."""
    first = (begin(old, "p0").state, begin(new, "p0").state)
    waiting, met = [(first, 0)], {first}
    for (one, other), length in waiting:
        if not met_alike(old, one, new, other):
            return length
        after = keyed(new, other)
        for key, move in keyed(old, one).items():
            pair = advance(old, one, move), advance(new, other, after[key])
            if pair not in met:
                met.add(pair)
                waiting.append((pair, length + 1))
        if len(met) > MOST:
            return -1
    return None


@given(libraries())
def test_a_library_behaves_as_it_does(library: Library) -> None:
    assert isinstance(behaviour((library, "p0"), (library, "p0")), Alike)


def some(library: Library, number: int) -> list[Mutant]:
    made = [each for each in mutants(library, "p0") if is_walkable(each, library)]
    return made[number % 5 :: 5]


@given(libraries(), st.integers(0, 10_000))
def test_the_walk_told_is_genuine_and_none_is_shorter(library: Library, number: int) -> None:
    for mutant in some(library, number):
        edited = mutant.within(library)
        found = behaviour((library, "p0"), (edited, "p0"))
        length = shortest(library, edited)
        if isinstance(found, Apart):
            assert len(found.old) == len(found.new)
            one, other = walked(library, found.old), walked(edited, found.new)
            assert not met_alike(library, one, edited, other), mutant.id
            assert length in (len(found.old), -1), mutant.id
        else:
            assert length in (None, -1), mutant.id


@given(libraries(), st.integers(0, 10_000))
def test_what_a_team_would_notice_is_never_editorial(library: Library, number: int) -> None:
    for mutant in some(library, number):
        edited = mutant.within(library)
        if not isinstance(behaviour((library, "p0"), (edited, "p0")), Alike):
            names = told_again(library, edited, {"p0": "p0"})
            before = in_new_names(library, names)
            pathways = before.pathways["p0"], edited.pathways["p0"]
            found = (
                *changes_of_pathway(*pathways, names),
                *changes_of_shared(before, edited, None, names),
            )
            assert gravest(each.rating for each in found) is not Rating.EDITORIAL, mutant.id
