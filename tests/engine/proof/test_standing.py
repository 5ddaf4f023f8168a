"""Edits after which more has to be looked at than the moves that changed, and searches given up."""

from __future__ import annotations

import pytest
from chamberwise.engine.exploration.wanted import NobodyWaitsError, wanted_while
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.rule import Pattern
from chamberwise.engine.model.step import Step
from chamberwise.engine.model.words import Act
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.standing import Standing
from chamberwise.engine.proof.verdict import Proof

from tests.support.build import act, ask, bounded, do, end, finding, hand_over, library, pathway
from tests.support.covering import covers_what_a_sweep_meets
from tests.support.rules import at, rule

SURE = {"a": "a1"}
ASKED = ask("asked", "a", a1="looked", a2="looked")
RULES = (
    rule(Pattern.RESPONSE, at(act="fill", surely=SURE), at(act="cut"), name="fill-then-cut"),
    rule(Pattern.ABSENCE, at(act="cut", surely=SURE), name="never-cut"),
    rule(Pattern.BOUNDED_EXISTENCE, at(act="look"), times=2, name="look-twice-at-most"),
    rule(Pattern.ABSENCE, at(act="cut", surely={"b": "b1"}), name="no-cut-on-b1"),
)


def example(
    after_rest: str = "cut-it",
    at_most: int = 2,
    after_looks: str = "rest-it",
    after_cut: str = "over",
    values: str = "b1 b2",
    look: Act | None = None,
    back: str = "done",
    last: Step | None = None,
    called_by: Pathway | None = None,
    rests: str = "rest",
    asked: Step | None = None,
) -> Library:
    """Return a library in which `a` is asked and, as a rule, never read again."""
    return library(
        pathway(
            "p",
            asked or ASKED,
            bounded(do("looked", "ready", acts="look"), at_most, after_looks),
            ask("ready", "b", b1="looked", b2="rest-it"),
            do("rest-it", after_rest, acts=rests),
            bounded(do("cut-it", after_cut, acts="cut", stale="a"), 1, after_cut),
            do("fill-it", "over", acts="fill"),
            last or do("over", "to-rest", acts="rest"),
            hand_over("to-rest", "q", rested=back),
            end("done"),
        ),
        pathway("q", do("rests", "rested", acts="rest"), end("rested")),
        *([called_by] if called_by else ()),
        findings=[finding("a", "a1 a2"), finding("b", values)],
        acts=[look or act("look", stale="b"), act("rest"), act("cut"), act("fill")],
    )


def calling(back: str) -> Pathway:
    """Return a pathway that hands over to the one that is proved, and may be come back to."""
    steps = [do("fills", "ended", acts="fill"), end("ended")]
    if back:
        return pathway("r", hand_over("calls", "p", done=back), *steps)
    return pathway("r", hand_over("calls", "p"), *steps)


EDITS = (
    example(),
    example("fill-it"),
    example("over"),
    example(at_most=3),
    example(after_looks="over"),
    example("fill-it", after_looks="cut-it"),
    example("done", 3),
    example(after_looks="cut-it"),
    example(after_looks="cut-it", after_cut="looked"),
    example(after_looks="over", values="b1 b2 b3"),
    example(after_looks="over", look=act("look")),
    example(after_looks="over", rests="rest fill"),
    example(after_looks="over", asked=bounded(ASKED, 1, "looked")),
    example("fill-it", look=act("look", known={"a": "a1"})),
    example("fill-it", look=act("look", known={"a": "a2"})),
    example(back="fill-it"),
    example("over", back="cut-it"),
    example("fill-it", called_by=calling("fills")),
    example("fill-it", called_by=calling("")),
    example(last=bounded(do("over", "to-rest", acts="rest"), 1, "fill-it")),
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
            for each in standing.kept:
                covers_what_a_sweep_meets(each)


def test_most_of_it_stands() -> None:
    standing = Standing()
    cold = proved(example("over"), standing)
    warm = proved(example("done"), standing)
    assert warm.states < cold.states / 2


@pytest.mark.parametrize("given_up", EDITS[1:6])
def test_a_search_given_up_leaves_what_stood(given_up: Library) -> None:
    for saved in EDITS[:6]:
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
