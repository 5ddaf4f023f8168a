"""Rules in plain English."""

from __future__ import annotations

from typing import Any

import pytest
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.rule import AnyOf, Extent, Happening, Pattern, Scope
from chamberwise.exports.proof.happenings import long_lists
from chamberwise.exports.proof.in_words import rule_in_words
from hypothesis import given

from tests.exports.proof.stage import PATHWAY, loaded
from tests.support.rules import Ruled, rule, ruled_libraries

FILL = (Happening(acts=("fill-chamber",)),)
HYDRATE = (Happening(acts=("hydrate-wound",)),)
SUTURE = (Happening(acts=("suture-wound",)),)
ASK = (Happening(asks=("leak",)),)
END = (Happening(outcomes=("any",)),)
AFTER_EACH_FILL = Scope(Extent.AFTER_UNTIL, FILL)


def so(**values: Any) -> AnyOf:
    return (Happening(**values),)


def leak(*names: str) -> Condition:
    return Condition((("leak", names),))


def said(pattern: Pattern, of: AnyOf, by: AnyOf = (), **more: Any) -> str:
    return rule_in_words(loaded().library, PATHWAY, rule(pattern, of, by, **more))


@pytest.mark.parametrize(
    ("pattern", "of", "by", "words"),
    [
        (Pattern.ABSENCE, FILL, (), "“Fill the chamber” never comes."),
        (Pattern.EXISTENCE, FILL, (), "“Fill the chamber” comes at some time."),
        (
            Pattern.PRECEDENCE,
            FILL,
            ASK,
            "“Fill the chamber” comes only after the question of “Leak” has come.",
        ),
        (
            Pattern.RESPONSE,
            FILL,
            ASK,
            "Each time after “Fill the chamber”, the question of “Leak” comes later.",
        ),
        (
            Pattern.ALTERNATE_PRECEDENCE,
            SUTURE,
            FILL,
            "Each time before “Suture the wound”, “Fill the chamber” comes anew.",
        ),
        (
            Pattern.CHAIN_PRECEDENCE,
            SUTURE,
            FILL,
            "The act directly before “Suture the wound” is always “Fill the chamber”.",
        ),
        (
            Pattern.CHAIN_RESPONSE,
            SUTURE,
            FILL,
            "The act directly after “Suture the wound” is always “Fill the chamber”.",
        ),
        (
            Pattern.RESPONDED_EXISTENCE,
            SUTURE,
            FILL,
            "A walk on which “Suture the wound” comes has “Fill the chamber” too, before or "
            "after it.",
        ),
        (
            Pattern.NOT_CO_EXISTENCE,
            SUTURE,
            FILL,
            "“Suture the wound” and “Fill the chamber” never come on the same walk.",
        ),
    ],
)
def test_each_pattern(pattern: Pattern, of: AnyOf, by: AnyOf, words: str) -> None:
    assert said(pattern, of, by) == words


@pytest.mark.parametrize(
    ("scope", "words"),
    [
        (
            Scope(Extent.BEFORE, closes=END),
            "Before the end of the walk comes for the first time, if it does: “Fill the chamber” "
            "never comes.",
        ),
        (
            Scope(Extent.AFTER, HYDRATE),
            "Once “Hydrate the wound” has come: “Fill the chamber” never comes.",
        ),
        (
            Scope(Extent.BETWEEN, HYDRATE, ASK),
            "Each time between “Hydrate the wound” and the question of “Leak”: “Fill the chamber” "
            "never comes.",
        ),
        (
            Scope(Extent.AFTER_UNTIL, HYDRATE, SUTURE),
            "Each time after “Hydrate the wound”, until “Suture the wound” comes: “Fill the "
            "chamber” never comes.",
        ),
        (
            Scope(Extent.AFTER_UNTIL, HYDRATE),
            "Each time after “Hydrate the wound”: “Fill the chamber” never comes.",
        ),
    ],
)
def test_each_scope(scope: Scope, words: str) -> None:
    assert said(Pattern.ABSENCE, FILL, scope=scope) == words


@pytest.mark.parametrize(
    ("happening", "words"),
    [
        (
            so(acts=("fill-chamber", "hydrate-wound", "suture-wound")),
            "“Fill the chamber”, “Hydrate the wound” or “Suture the wound” never comes.",
        ),
        (
            so(acts=("fill-chamber",), by=("scrub-practitioner",)),
            "“Fill the chamber” by the scrub practitioner never comes.",
        ),
        (so(by=("surgeon",)), "Anything that the surgeon does or says never comes."),
        (
            so(acts=("fill-chamber",), possibly=leak("slow", "fast"), stale=("depth",)),
            "“Fill the chamber” never comes while Leak may be “Slow” or “Fast” and Chamber depth "
            "is stale.",
        ),
        (
            so(acts=("fill-chamber",), unless_surely=leak("none"), unless_known=("depth",)),
            "“Fill the chamber” never comes, unless Leak is surely “None” or Chamber depth is "
            "known.",
        ),
        (
            so(asks=("leak",), surely=leak("none")),
            "An answer on “Leak” that makes it surely “None” never comes.",
        ),
        (
            so(asks=("leak",), possibly=leak("slow", "fast")),
            "An answer on “Leak” that leaves “Slow” or “Fast” possible never comes.",
        ),
        (
            so(asks=("leak",), known=("depth",)),
            "The question of “Leak” after which Chamber depth is known never comes.",
        ),
        (
            so(unknown=("leak",), known=("depth",)),
            "It never comes to a moment at which Chamber depth is known and Leak is unknown.",
        ),
        (
            so(warns_of=("suture-wound",)),
            "A danger or warning of “Suture the wound” never comes.",
        ),
        (
            so(outcomes=("refer", "settled")),
            "The outcome “Referred the same day” or “The patient is settled” never comes.",
        ),
        (
            so(hands_over_to=("restless-patient",)),
            "The handover to “Restless patient” never comes.",
        ),
        (
            (*FILL, *so(acts=("suture-wound",), possibly=leak("none"))),
            "“Fill the chamber” or (“Suture the wound” while Leak may be “None”) never comes.",
        ),
    ],
)
def test_what_happens(happening: AnyOf, words: str) -> None:
    assert said(Pattern.ABSENCE, happening) == words


def test_counts_and_what_is_always_so() -> None:
    bounded = said(Pattern.BOUNDED_EXISTENCE, FILL, times=2, scope=AFTER_EACH_FILL)
    assert bounded == "Each time after “Fill the chamber”: “Fill the chamber” comes twice at most."
    always = said(Pattern.UNIVERSALITY, so(surely=leak("none", "slow")))
    assert always == "At every moment Leak is surely “None” or “Slow”."
    unless = said(Pattern.UNIVERSALITY, so(unless_possibly=leak("fast")))
    assert unless == "Every moment is a moment, unless Leak may be “Fast”."


MANY = ("fill-chamber", "hydrate-wound", "suture-wound", "call-for-help", "tell-patient")
THE_MANY = (
    "5 acts: “Fill the chamber”, “Hydrate the wound”, “Suture the wound”, “Call for help” and "
    "“Tell the patient”"
)


def test_a_long_list_is_counted_in_the_sentence_and_told_beside_it() -> None:
    happening = so(acts=MANY, possibly=leak("none"))
    never = said(Pattern.ABSENCE, happening)
    assert never == "None of 5 acts (listed below) comes while Leak may be “None”."
    only_after = said(Pattern.PRECEDENCE, happening, ASK)
    assert only_after == (
        "Any of 5 acts (listed below) while Leak may be “None” comes only after the question of "
        "“Leak” has come."
    )
    assert long_lists(loaded().library, PATHWAY, [*happening, *FILL, *happening]) == [THE_MANY]


def test_a_colon_parts_what_comes_from_what_it_comes_for() -> None:
    words = said(Pattern.RESPONSE, so(acts=MANY[:3]), FILL)
    assert words == (
        "Each time after “Fill the chamber”, “Hydrate the wound” or “Suture the wound”: “Fill the "
        "chamber” comes later."
    )


def test_a_name_that_is_not_defined_stands_for_itself() -> None:
    words = said(
        Pattern.PRECEDENCE,
        so(acts=("gone",), surely=Condition((("lost", ("away",)),))),
        so(outcomes=("nowhere",)),
    )
    assert words == (
        "“gone” while lost is surely “away” comes only after the outcome “nowhere” has come."
    )


@given(ruled_libraries() | ruled_libraries(tame=False))
def test_any_rule_is_one_sentence_that_names_what_it_is_of(drawn: Ruled) -> None:
    for each in drawn.rules:
        words = rule_in_words(drawn.library, "p0", each)
        assert words.endswith(".")
        assert words.count("\n") == 0
        assert words[0] == words[0].upper()
        assert "{" not in words
        named = [act for happening in (*each.of, *each.by) for act in happening.acts]
        assert [act for act in named if f"“{act}”" not in words] == []
