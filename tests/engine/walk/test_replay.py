"""A replay: the moves of a walk ahead, to be made one at a time, left, and come back to."""

from __future__ import annotations

from chamberwise.engine.meaning.state import Answered, Done, Move
from chamberwise.engine.walk.entries import Began, Moved, Redone
from chamberwise.engine.walk.walk import Walk, fold, make, redo, set_out, undo
from hypothesis import given
from hypothesis import strategies as st

from tests.support.strategies import libraries, picks
from tests.support.walking import random_walk
from tests.tui.stage import MORNING, loaded

MOVES: tuple[Move, ...] = (Answered("slow"), Done(), Answered("none"))


def replay(moves: tuple[Move, ...] = MOVES) -> Walk:
    return set_out(loaded().library, "leaking-wound", "d" * 64, MORNING, moves)


def test_nothing_is_made_at_first_and_all_of_it_is_ahead() -> None:
    walk = replay()
    assert (walk.legs, walk.ahead, walk.can_redo) == ((), MOVES, True)
    assert [type(each) for each in walk.journal] == [Began]


def test_each_redo_makes_the_next_move_as_a_move_of_its_own() -> None:
    walk = replay()
    for left in (2, 1, 0):
        walk = redo(walk, MORNING)
        assert len(walk.ahead) == left
    assert tuple(leg.move for leg in walk.legs) == MOVES
    assert [type(each) for each in walk.journal[1:]] == [Moved] * 3
    assert not walk.can_redo
    assert redo(walk, MORNING) == walk


def test_a_move_taken_back_is_made_again_as_such() -> None:
    walk = redo(undo(redo(replay(), MORNING), MORNING), MORNING)
    assert [type(each) for each in walk.journal[-1:]] == [Redone]
    assert walk.ahead == MOVES[1:]


def test_making_the_move_by_hand_stays_on_the_replay() -> None:
    assert make(replay(), MOVES[0], MORNING).ahead == MOVES[1:]


def test_another_move_leaves_the_replay_and_undo_comes_back_to_it() -> None:
    walk = make(redo(replay(), MORNING), Done(), MORNING)
    off = make(walk, Answered("cannot tell"), MORNING)
    assert (off.is_off_replay, off.ahead, off.can_redo) == (True, (), False)
    back = undo(off, MORNING)
    assert (back.is_off_replay, back.ahead) == (False, MOVES[2:])
    on = redo(back, MORNING)
    assert on.legs[-1].move == MOVES[2]


def test_going_on_beyond_the_end_is_not_leaving_it() -> None:
    walk = replay(MOVES[:1])
    for move in MOVES[:2]:
        walk = make(walk, move, MORNING)
    assert (walk.is_off_replay, walk.ahead) == (False, ())


@given(libraries() | libraries(tame=False), picks, st.lists(st.booleans(), max_size=40))
def test_a_replay_comes_to_the_same_end_and_its_journal_folds(
    library: object, chosen: list[int], forward: list[bool]
) -> None:
    legs = list(random_walk(library, "p0", chosen))  # type: ignore[arg-type]
    walk = set_out(library, "p0", "d" * 64, MORNING, tuple(leg.move for leg in legs))  # type: ignore[arg-type]
    for on in forward:
        walk = redo(walk, MORNING) if on else undo(walk, MORNING)
        assert len(walk.legs) + len(walk.ahead) == len(legs)
    while walk.ahead:
        walk = redo(walk, MORNING)
    assert [leg.made.state for leg in walk.legs] == [leg.made.state for leg in legs]
    folded = fold(walk.library, walk.journal)
    assert (folded.legs, folded.taken_back) == (walk.legs, walk.taken_back)
