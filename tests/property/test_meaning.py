"""What an answer or an action does, on random walks of random libraries."""

from __future__ import annotations

import pytest
from chamberwise.engine.meaning.advance import (
    CameBack,
    IllegalMoveError,
    PassedOver,
    advance,
    begin,
    moves,
    passage,
)
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.state import Answered, Done, Freshness, Move, State
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import CANNOT_TELL, Outcome, Question
from hypothesis import given

from tests.support import naive
from tests.support.strategies import libraries, picks
from tests.support.walking import everything, move_name, passages, random_walk

any_library = libraries() | libraries(tame=False)


def every_move(library: Library) -> set[Move]:
    """Return every move anybody could think of."""
    answers = {
        answer.id
        for pathway in library.pathways.values()
        for step in pathway.steps.values()
        if isinstance(step, Question)
        for answer in step.answers
    }
    return {Done(), *(Answered(name) for name in (*answers, CANNOT_TELL, "nonsense", ""))}


@given(any_library, picks)
def test_moves_are_the_legal_ones_and_every_other_is_refused(
    library: Library, chosen: list[int]
) -> None:
    for made in passages(library, "p0", chosen):
        legal = moves(library, made.state)
        assert len(set(legal)) == len(legal)
        for move in every_move(library):
            if move in legal:
                advance(library, made.state, move)
            else:
                with pytest.raises(IllegalMoveError):
                    advance(library, made.state, move)


@given(any_library, picks)
def test_the_same_move_in_the_same_state_leads_to_the_same_state(
    library: Library, chosen: list[int]
) -> None:
    once = list(passages(library, "p0", chosen))
    assert once == list(passages(library, "p0", chosen))
    for leg in random_walk(library, "p0", chosen):
        before = repr(leg.before)
        copy = State(
            leg.before.place,
            leg.before.possible,
            leg.before.last_seen,
            leg.before.entered,
            leg.before.way_back,
        )
        assert passage(library, copy, leg.move) == leg.made
        assert repr(leg.before) == before
        assert hash(copy) == hash(leg.before)


@given(any_library, picks)
def test_a_second_writing_of_the_meaning_agrees(library: Library, chosen: list[int]) -> None:
    team = naive.set_out(library, "p0")
    assert _told(library, team) == _seen(library, begin(library, "p0").state)
    for leg in random_walk(library, "p0", chosen):
        assert naive.offered(team) == [move_name(move) for move in moves(library, leg.before)]
        naive.go(team, move_name(leg.move))
        assert _told(library, team) == _seen(library, leg.made.state)
    last = [made.state for made in passages(library, "p0", chosen)][-1]
    assert naive.offered(team) == [move_name(move) for move in moves(library, last)]


def _told(library: Library, team: naive.Team) -> object:
    possible = {key: frozenset(values) for key, values in team.possible.items()}
    seen = {key: frozenset(values) for key, values in team.seen.items()}
    return team.place, possible, seen, team.entered, team.back


def _seen(library: Library, state: State) -> object:
    layout = layout_of(library)
    fields = {("", name): field for name, field in layout.shared.items()}
    for pathway, own in layout.own.items():
        fields |= {(pathway, name): field for name, field in own.items()}
    possible = {key: frozenset(field.values(state.possible)) for key, field in fields.items()}
    stale = {key: frozenset(field.values(state.last_seen)) for key, field in fields.items()}
    seen = {key: values for key, values in stale.items() if values}
    return state.place, possible, seen, dict(state.entered), list(state.way_back)


@given(libraries(), picks)
def test_what_is_known_and_fresh_is_never_asked(library: Library, chosen: list[int]) -> None:
    for made in passages(library, "p0", chosen):
        step = library.step(made.state.place)
        if isinstance(step, Question):
            field = layout_of(library).field(made.state.place.pathway, step.ask)
            assert made.state.freshness(field) is not Freshness.KNOWN


@given(any_library, picks)
def test_what_is_stale_or_unknown_is_never_passed_over(library: Library, chosen: list[int]) -> None:
    for made in passages(library, "p0", chosen):
        for event in made.silent:
            if isinstance(event, PassedOver):
                step = library.step(event.place)
                assert isinstance(step, Question)
                field = layout_of(library).field(event.place.pathway, step.ask)
                fresh = made.state.freshness(field)
                assert fresh in (Freshness.KNOWN, Freshness.PARTLY)


@given(any_library, picks)
def test_cannot_tell_adds_no_knowledge(library: Library, chosen: list[int]) -> None:
    for leg in random_walk(library, "p0", chosen):
        if leg.move == Answered(CANNOT_TELL):
            after = leg.made.state
            assert after.possible == leg.before.possible
            assert after.last_seen == leg.before.last_seen


@given(any_library, picks)
def test_an_answer_rules_values_out_and_brings_none_back(
    library: Library, chosen: list[int]
) -> None:
    for leg in random_walk(library, "p0", chosen):
        if isinstance(leg.move, Answered):
            assert leg.made.state.possible & ~leg.before.possible == 0
            assert leg.made.state.possible != 0


@given(libraries())
def test_a_handover_comes_back_to_where_it_left(library: Library) -> None:
    """The way back only ever grows by the handover made, and loses its last on the return."""
    found = everything(library, "p0", 1000)
    for before, after in found.onward.items():
        for state in after:
            longer = (*before.way_back, before.place)
            assert _is_cut_from(state.way_back, longer) or state.way_back == ()


def _is_cut_from(shorter: tuple[Place, ...], longer: tuple[Place, ...]) -> bool:
    return shorter == longer[: len(shorter)]


@given(libraries())
def test_coming_back_forgets_how_often_steps_over_there_were_entered(library: Library) -> None:
    found = everything(library, "p0", 1000)
    for made in found.passages:
        left = {each.outcome.pathway for each in made.silent if isinstance(each, CameBack)}
        assert not left & {place.pathway for place, _ in made.state.entered}


@given(libraries())
def test_every_walk_ends(library: Library) -> None:
    """With a bound on every loop no state is met twice, so no walk is longer than their number."""
    found = everything(library, "p0")
    if not found.complete:
        return
    height: dict[State, int] = {}
    for state in _leaves_first(found.onward):
        height[state] = 1 + max((height[each] for each in found.onward[state]), default=0)
    assert height[found.passages[0].state] <= len(found.onward)


def _leaves_first(onward: dict[State, list[State]]) -> list[State]:
    """Return the states, those led to first. Fails on a round."""
    done: dict[State, None] = {}
    open_now: set[State] = set()
    waiting: list[tuple[State, bool]] = [(next(iter(onward)), False)]
    while waiting:
        state, is_left = waiting.pop()
        if is_left:
            open_now.discard(state)
            done[state] = None
        elif state not in done:
            assert state not in open_now
            open_now.add(state)
            waiting.append((state, True))
            for each in onward[state]:
                assert each not in open_now, "a walk comes back to a state it was in"
                waiting.append((each, False))
    return list(done)


@given(libraries())
def test_what_ends_a_walk_is_an_outcome_or_a_branch_that_cannot_decide(library: Library) -> None:
    found = everything(library, "p0", 1000)
    for state, after in found.onward.items():
        if not after and not isinstance(library.step(state.place), Outcome) and found.complete:
            assert type(library.step(state.place)).__name__ in ("Branch", "Question")
