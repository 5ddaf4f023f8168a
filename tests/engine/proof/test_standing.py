"""Edits after which more has to be looked at than the moves that changed, and searches given up."""

from __future__ import annotations

import pytest
from chamberwise.engine.exploration.wanted import NobodyWaitsError, wanted_while
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Pattern
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.standing import Standing
from chamberwise.engine.proof.verdict import Proof

from tests.support.build import act, ask, bounded, do, end, finding, library, pathway
from tests.support.rules import at, rule

SURE = {"a": "a1"}
RULES = (
    rule(Pattern.RESPONSE, at(act="fill", surely=SURE), at(act="cut"), name="fill-then-cut"),
    rule(Pattern.ABSENCE, at(act="cut", surely=SURE), name="never-cut"),
    rule(Pattern.BOUNDED_EXISTENCE, at(act="look"), times=2, name="look-twice-at-most"),
)


def example(after_rest: str = "cut-it", at_most: int = 2, after_looks: str = "rest-it") -> Library:
    """Return a library in which `a` is asked and, as a rule, never read again."""
    return library(
        pathway(
            "p",
            ask("asked", "a", a1="looked", a2="looked"),
            bounded(do("looked", "ready", acts="look"), at_most, after_looks),
            ask("ready", "b", b1="looked", b2="rest-it"),
            do("rest-it", after_rest, acts="rest"),
            do("cut-it", "over", acts="cut", stale="a"),
            do("fill-it", "over", acts="fill"),
            do("over", "done", acts="rest"),
            end("done"),
        ),
        findings=[finding("a", "a1 a2"), finding("b", "b1 b2")],
        acts=[act("look", stale="b"), act("rest"), act("cut"), act("fill")],
    )


EDITS = (
    example(),
    example("fill-it"),
    example("over"),
    example(at_most=3),
    example(after_looks="over"),
    example("fill-it", after_looks="cut-it"),
    example("done", 3),
)


def proved(library: Library, standing: Standing | None = None) -> Proof:
    return prove(library, "p", RULES, standing=standing)


@pytest.mark.parametrize("first", EDITS)
def test_what_is_read_again_is_looked_at_again(first: Library) -> None:
    for second in EDITS:
        standing = Standing()
        proved(first, standing)
        for saved in (second, first, second):
            assert proved(saved, standing).verdicts == proved(saved).verdicts


def test_most_of_it_stands() -> None:
    standing = Standing()
    cold = proved(example("over"), standing)
    warm = proved(example("done"), standing)
    assert warm.states < cold.states / 2


@pytest.mark.parametrize("given_up", EDITS)
def test_a_search_given_up_leaves_what_stood(given_up: Library) -> None:
    for saved in EDITS:
        most = 1
        while _proved_after(most, given_up, saved):
            most += 5
        assert most > 10


def _proved_after(most: int, given_up: Library, saved: Library) -> bool:
    """Give a proof up after so many questions whether it is wanted; return whether it was."""
    standing, asked = Standing(), iter(range(most))
    proved(EDITS[0], standing)
    try:
        with wanted_while(lambda: next(asked, None) is not None):
            proved(given_up, standing)
    except NobodyWaitsError:
        assert proved(saved, standing).verdicts == proved(saved).verdicts
        return True
    return False
