"""Plans: every drill of one can happen, together they give every answer, and none is needless."""

from __future__ import annotations

import pytest
from chamberwise.engine.drill.coverage.plan import Plan, Planned, plan
from chamberwise.engine.meaning.advance import advance, begin, moves
from chamberwise.engine.meaning.state import Answered, State
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.rule import Pattern
from chamberwise.engine.model.step import Outcome, Question
from hypothesis import given, settings

from tests.conformance.driver import library as shipped
from tests.support import rules
from tests.support.build import act, ask, bounded, do, end, finding, hand_over, library, pathway
from tests.support.strategies import libraries
from tests.support.walking import everything


def replayed(of: Library, entry: str, drill: Planned) -> State:
    """Walk a drill by `advance`; its answers have to be asked for in their order."""
    state, answers = begin(of, entry).state, list(drill.answers)
    while offered := moves(of, state):
        move = offered[0]
        if isinstance(of.step(state.place), Question):
            place, name = answers.pop(0)
            assert place == state.place
            move = Answered(name)
            assert move in offered
        state = advance(of, state, move)
    assert answers == []
    return state


def holds_good(of: Library, entry: str, found: Plan) -> None:
    given_answers = {answer for drill in found.drills for answer in drill.answers}
    assert len(given_answers) + len(found.never) == found.answers
    assert given_answers.isdisjoint(found.never)
    assert found.at_least <= len(found.drills)
    for drill in found.drills:
        assert replayed(of, entry, drill).place == drill.ends_at


@pytest.mark.parametrize("entry", ["anterior-vitrectomy", "closing-and-after-care"])
def test_every_drill_of_a_plan_can_happen(entry: str) -> None:
    found = plan(shipped(), entry)
    holds_good(shipped(), entry, found)
    assert found.never == ()
    assert all(isinstance(shipped().step(drill.ends_at), Outcome) for drill in found.drills)


def test_the_main_pathway_is_covered_but_for_what_is_known_before_it_is_asked() -> None:
    entry = "posterior-capsule-rupture"
    found = plan(shipped(), entry)
    holds_good(shipped(), entry, found)
    assert {place.step for place, _ in found.never} == {"is-a-tip-in-the-eye", "is-a-lens-in"}
    assert found.answers == 418
    assert 80 < found.at_least <= len(found.drills) < 1.4 * found.at_least


def two_exits() -> Library:
    return library(
        pathway(
            "one",
            ask("look", "vitreous", none="close", present="clear"),
            do("clear", "again", acts="cut", stale="vitreous"),
            bounded(ask("again", "vitreous", none="close", present="clear"), 2, "give-up"),
            end("close"),
            end("give-up"),
        ),
        findings=[finding("vitreous", "none present")],
        acts=[act("cut")],
        rules=[
            rules.rule(
                Pattern.ABSENCE,
                rules.at(act="cut"),
                scope=rules.Scope(rules.Extent.AFTER, rules.at(asks="vitreous")),
                name="after-a-look",
            ),
            rules.rule(Pattern.ABSENCE, rules.at(act="pray", possibly={"vitreous": "none"})),
        ],
    )


def test_as_few_as_there_can_be_on_a_small_pathway() -> None:
    found = plan(two_exits(), "one")
    holds_good(two_exits(), "one", found)
    assert found.never == ()
    assert len(found.drills) == found.at_least


def test_rules_that_arise_are_told_where_they_first_do() -> None:
    found = plan(two_exits(), "one")
    first = [rule for drill in found.drills for rule in drill.first_rules]
    assert first == ["after-a-look"]
    assert (found.rules, found.never_arise) == (2, ("rule",))


def test_answers_over_there_count_once_whoever_hands_over() -> None:
    of = library(
        pathway(
            "one",
            ask("which", "side", left="to-left", right="to-right"),
            hand_over("to-left", "two", done="over"),
            hand_over("to-right", "two", done="over"),
            end("over"),
        ),
        pathway("two", ask("look", "vitreous", none="done", present="done"), end("done")),
        findings=[finding("vitreous", "none present"), finding("side", "left right")],
    )
    found = plan(of, "one")
    holds_good(of, "one", found)
    assert {place for place, _ in found.drills[0].answers} == {
        Place("one", "which"),
        Place("two", "look"),
    }
    assert len(found.drills) == 3


@settings(max_examples=40)
@given(libraries())
def test_what_a_plan_leaves_out_no_walk_gives(of: Library) -> None:
    """Against every state found by `advance` alone."""
    every = everything(of, "p0", most=1500)
    if not every.complete:
        return
    found = plan(of, "p0")
    holds_good(of, "p0", found)
    possible = {
        (state.place, move.answer)
        for state in every.onward
        for move in moves(of, state)
        if isinstance(move, Answered)
    }
    assert {answer for drill in found.drills for answer in drill.answers} == possible
