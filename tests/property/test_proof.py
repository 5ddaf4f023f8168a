"""What is proved is what walking every walk shows, moment by moment, by the definitions."""

from __future__ import annotations

import os

from chamberwise.engine.meaning.advance import advance, begin
from chamberwise.engine.meaning.moments import last_moments
from chamberwise.engine.model.library import Library
from chamberwise.engine.patterns.formula import holds
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.rules import comes_back_by
from chamberwise.engine.proof.trace import formula, is_lost, letters, trace
from chamberwise.engine.proof.verdict import Holds, Unproven, Verdict, Violated
from hypothesis import given, settings

from tests.support.every_walk import EveryWalk, Judged
from tests.support.rules import Ruled, ruled_libraries

THOROUGH = os.environ.get("CHAMBERWISE_TESTS") == "thorough"
many = settings(max_examples=3000 if THOROUGH else 300)
any_ruled = ruled_libraries() | ruled_libraries(tame=False)


@many
@given(any_ruled)
def test_the_verdicts_are_those_of_walking_every_walk(drawn: Ruled) -> None:
    every = EveryWalk(drawn.library, drawn.entry, drawn.rules)
    for verdict, judged in zip(_proved(drawn), every.judged, strict=True):
        _agree(verdict, judged, every)


def _agree(verdict: Verdict, judged: Judged, every: EveryWalk) -> None:
    told = len(verdict.counterexample.moves) if isinstance(verdict, Violated) else None
    if judged.broken_after is not None or every.complete:
        assert told == judged.broken_after
    else:
        assert told is None or told > every.moves
    if isinstance(verdict, Holds) and (judged.bites or every.complete):
        assert not (verdict.is_vacuous and judged.bites)
        if not _has_bounds(every.library):  # with loops left free more walks may come to it
            assert verdict.is_vacuous is not judged.bites


def _has_bounds(library: Library) -> bool:
    pathways = library.pathways.values()
    return any(step.bound for pathway in pathways for step in pathway.steps.values())


def _proved(drawn: Ruled, *, reduced: bool = True) -> tuple[Verdict, ...]:
    return prove(drawn.library, drawn.entry, drawn.rules, reduced=reduced).verdicts


@many
@given(any_ruled)
def test_a_counterexample_replays_and_breaks_where_it_says(drawn: Ruled) -> None:
    for verdict in _proved(drawn):
        if isinstance(verdict, Violated):
            _replay(drawn, verdict)


def _replay(drawn: Ruled, verdict: Violated) -> None:
    library, entry = drawn.library, drawn.entry
    rule, told = verdict.rule, verdict.counterexample
    assert told.pathway == entry
    state = begin(library, entry).state
    for move in told.moves:
        state = advance(library, state, move)
    walked = trace(library, entry, told.moves)
    assert is_lost(library, entry, rule, walked) == told.moment
    if told.moment is None:
        assert last_moments(library, state)
        assert not holds(formula(rule), letters(library, entry, rule, walked))
        assert state.place.pathway != entry or state.place.step not in comes_back_by(library, entry)
    else:
        before = len(trace(library, entry, told.moves[:-1])) if told.moves else 0
        assert told.moment >= before - len(last_moments(library, begin(library, entry).state))


@many
@given(any_ruled)
def test_forgetting_what_is_dead_changes_no_verdict_and_no_length(drawn: Ruled) -> None:
    for less, whole in zip(_proved(drawn), _proved(drawn, reduced=False), strict=True):
        assert type(less) is type(whole)
        if isinstance(less, Violated) and isinstance(whole, Violated):
            assert len(less.counterexample.moves) == len(whole.counterexample.moves)
        else:
            assert less == whole


@given(any_ruled)
def test_a_rule_is_judged_alone_as_among_others(drawn: Ruled) -> None:
    together = _proved(drawn)
    alone = [prove(drawn.library, drawn.entry, [rule]).verdicts[0] for rule in drawn.rules]
    assert list(map(type, together)) == list(map(type, alone))
    for one, other in zip(together, alone, strict=True):
        if isinstance(one, Violated) and isinstance(other, Violated):
            assert len(one.counterexample.moves) == len(other.counterexample.moves)
        else:
            assert one == other


@given(any_ruled)
def test_stopping_at_the_first_break_finds_one_where_there_is_one(drawn: Ruled) -> None:
    whole = _proved(drawn)
    first = prove(drawn.library, drawn.entry, drawn.rules, stop_at_first=True).verdicts
    lengths = [len(each.counterexample.moves) for each in whole if isinstance(each, Violated)]
    for short, full in zip(first, whole, strict=True):
        if isinstance(short, Violated):
            assert isinstance(full, Violated)
            assert len(short.counterexample.moves) == min(lengths)
        elif lengths:
            assert isinstance(short, Unproven) or short == full
        else:
            assert short == full
    assert bool(lengths) is any(isinstance(each, Violated) for each in first)


@given(any_ruled)
def test_what_a_bound_stops_is_never_said_to_hold(drawn: Ruled) -> None:
    whole = _proved(drawn)
    stopped = prove(drawn.library, drawn.entry, drawn.rules, most=2).verdicts
    for short, full in zip(stopped, whole, strict=True):
        assert isinstance(short, Unproven) or type(short) is type(full)
