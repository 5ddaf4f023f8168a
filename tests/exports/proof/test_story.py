"""The story of a counterexample: told in order, the place where the rule broke marked once."""

from __future__ import annotations

import pytest
from chamberwise.engine.model.rule import Extent, Happening, Pattern, Rule, Scope
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.replay_key import moves_of
from chamberwise.engine.proof.trace import is_lost, trace
from chamberwise.engine.proof.verdict import Counterexample, Violated
from chamberwise.exports.proof.content import Story, StoryKind
from chamberwise.exports.proof.paragraph import wrapped
from chamberwise.exports.proof.story import CLOSES, OPENS, story_of
from chamberwise.exports.proof.story_text import HERE, told
from chamberwise.exports.proof.text import proof_text
from hypothesis import given

from tests.exports.proof.stage import (
    NOT_TOLD,
    PATHWAY,
    TO_THE_SUTURE,
    broken,
    loaded,
    replay,
    walked,
)
from tests.support.rules import Ruled, at, rule, ruled_libraries
from tests.support.subjects import loaded as as_loaded

FILL, HYDRATE, SUTURE = (
    at(act=f"{name}") for name in ("fill-chamber", "hydrate-wound", "suture-wound")
)
END = at(outcome="any")


def story(violated: Violated) -> Story:
    return story_of(loaded(), violated.rule, violated.counterexample, replay)


def of(about: Rule, typed: str) -> Story:
    """Return the story of a walk that breaks a rule, the moment found by definition."""
    moves = walked(typed)
    moment = is_lost(loaded().library, PATHWAY, about, trace(loaded().library, PATHWAY, moves))
    return story(Violated(about, Counterexample(PATHWAY, moves, moment)))


def marks(told_of: Story) -> list[tuple[int, int | None]]:
    """Return each place marked as the one where the rule broke: the step, and the line of it."""
    found: list[tuple[int, int | None]] = []
    for step in told_of.steps:
        found += [(step.number, None)] if step.breaks else []
        found += [(step.number, at) for at, line in enumerate(step.lines) if line.breaks]
    return found


def test_the_line_where_the_rule_broke_is_marked() -> None:
    told_of = story(broken("deep-before-suture", TO_THE_SUTURE, 5))
    assert marks(told_of) == [(6, 0)]
    assert told_of.cause == "“Suture the wound” comes while Chamber depth may be “Flat”"
    assert [(each.finding, each.said) for each in told_of.known] == [
        ("Chamber depth", "unknown: possibly “Deep” or “Flat”")
    ]
    assert not told_of.at_end


def test_what_was_owed_and_never_came_is_told_at_the_end() -> None:
    told_of = story(broken("patient-is-told", NOT_TOLD, None))
    assert told_of.at_end
    assert marks(told_of) == [(7, None)]
    assert told_of.steps[-1].kind is StoryKind.ENDED
    assert told_of.cause == (
        "the walk has ended, and “Tell the patient” never came after “Fill the chamber”"
    )


def test_a_stale_finding_says_since_when() -> None:
    told_of = story(broken("no-suture-on-a-stale-look", TO_THE_SUTURE, 5))
    assert [each.said for each in told_of.known] == [
        "stale since step 4, “Hydrate the wound”; last seen “Slow” or “Fast”"
    ]


def test_silent_passages_that_bear_on_the_way_are_told() -> None:
    passed = [
        text
        for step in story(broken("patient-is-told", NOT_TOLD, None)).steps
        for text in step.passed
    ]
    assert passed == ["Back from Restless patient: The patient is not settled"]
    bound = story(broken("deep-before-suture", TO_THE_SUTURE, 5)).steps[4].passed
    assert bound == ("Tried 2 times, the most allowed here: Hydrate both edges of the wound",)


def test_where_the_scope_opens_and_closes_is_told_before_the_break() -> None:
    scope = Scope(Extent.AFTER_UNTIL, at(asks="leak"), HYDRATE)
    told_of = of(rule(Pattern.ABSENCE, SUTURE, scope=scope), TO_THE_SUTURE)
    remarks = [step.remark for step in told_of.steps if step.remark]
    lines = [line.remark for step in told_of.steps for line in step.lines if line.remark]
    assert remarks == [OPENS, OPENS, OPENS]
    assert lines == [CLOSES, CLOSES]


TO_THE_END = "slow, done, none, deep"


@pytest.mark.parametrize(
    ("about", "typed", "cause"),
    [
        (
            rule(Pattern.BOUNDED_EXISTENCE, HYDRATE, times=1),
            TO_THE_SUTURE,
            "“Hydrate the wound” comes more than once",
        ),
        (
            rule(Pattern.PRECEDENCE, HYDRATE, FILL),
            TO_THE_END,
            "“Hydrate the wound” comes, and “Fill the chamber” has not come before it",
        ),
        (
            rule(Pattern.ALTERNATE_PRECEDENCE, HYDRATE, at(asks="leak", surely={"leak": "slow"})),
            TO_THE_SUTURE,
            "“Hydrate the wound” comes, and an answer on “Leak” that makes it surely “Slow” has "
            "not come anew before it",
        ),
        (
            rule(Pattern.CHAIN_PRECEDENCE, SUTURE, FILL),
            TO_THE_SUTURE,
            "“Suture the wound” comes, and the act directly before it was not “Fill the chamber”",
        ),
        (
            rule(Pattern.CHAIN_RESPONSE, HYDRATE, SUTURE),
            TO_THE_SUTURE,
            "this act comes directly after “Hydrate the wound”; it had to be “Suture the wound”",
        ),
        (
            rule(Pattern.NOT_CO_EXISTENCE, SUTURE, HYDRATE),
            TO_THE_SUTURE,
            "“Suture the wound” comes on one walk with “Hydrate the wound”",
        ),
        (
            rule(Pattern.NOT_CO_EXISTENCE, HYDRATE, SUTURE),
            TO_THE_SUTURE,
            "“Suture the wound” comes on one walk with “Hydrate the wound”",
        ),
        (
            rule(Pattern.UNIVERSALITY, (Happening(unknown=("comfort",)),)),
            NOT_TOLD,
            "this moment is not a moment at which Patient comfort is unknown",
        ),
        (
            rule(Pattern.EXISTENCE, FILL, scope=Scope(Extent.BEFORE, closes=END)),
            TO_THE_END,
            "the end of the walk comes, and “Fill the chamber” has not come before it",
        ),
        (
            rule(Pattern.ABSENCE, HYDRATE, scope=Scope(Extent.BEFORE, closes=END)),
            TO_THE_END,
            "the end of the walk comes, and “Hydrate the wound” came before it",
        ),
        (
            rule(Pattern.EXISTENCE, FILL),
            TO_THE_END,
            "the walk has ended, and “Fill the chamber” never came",
        ),
        (
            rule(Pattern.RESPONDED_EXISTENCE, HYDRATE, FILL),
            TO_THE_END,
            "the walk has ended, and “Hydrate the wound” came, and “Fill the chamber” never did",
        ),
        (
            rule(Pattern.ABSENCE, at(outcome="any")),
            TO_THE_END,
            "the end of the walk comes",
        ),
    ],
)
def test_the_cause_is_told_by_the_pattern(about: Rule, typed: str, cause: str) -> None:
    assert of(about, typed).cause == cause


@given(ruled_libraries() | ruled_libraries(tame=False))
def test_any_counterexample_is_told_with_one_mark_and_replays(drawn: Ruled) -> None:
    home = as_loaded(drawn.library)
    for verdict in prove(drawn.library, "p0", drawn.rules).verdicts:
        if not isinstance(verdict, Violated):
            continue
        about, moves = verdict.rule, verdict.counterexample.moves
        told_of = story_of(home, about, verdict.counterexample, replay)
        lines = wrapped(told(told_of))
        assert len(marks(told_of)) == 1
        assert sum(HERE in line for line in lines) == 1
        assert [step.number for step in told_of.steps] == list(range(1, len(told_of.steps) + 1))
        assert len(told_of.steps) - len(moves) in (0, 1)
        assert moves_of(home, told_of.key, ["p0"]) == ("p0", moves)
        assert told_of.replay == replay(told_of.key)


def test_a_report_may_hold_no_story_at_all() -> None:
    from chamberwise.engine.proof.verdict import Proof
    from chamberwise.exports.proof.extract import proof_shown

    from tests.exports.proof.test_report import TODAY

    assert "HERE" not in proof_text(proof_shown(loaded(), Proof(PATHWAY, 1, ()), TODAY, replay))
