"""Situations at the table, each with what a careful surgeon does and leaves undone."""

from __future__ import annotations

import pytest
from chamberwise.engine.model.step import Branch

from tests.conformance.driver import GOOD, library
from tests.conformance.situation import Situation
from tests.conformance.situations import SITUATIONS


@pytest.mark.parametrize("situation", SITUATIONS, ids=lambda each: each.says)
def test_a_careful_surgeon_does_this(situation: Situation) -> None:
    assert situation.faults() == []


def test_no_situation_stands_twice() -> None:
    assert len({(each.entry, each.says) for each in SITUATIONS}) == len(SITUATIONS)
    assert len({(each.entry, tuple(each.found.items())) for each in SITUATIONS}) > 180


def test_every_word_of_a_situation_is_in_the_vocabulary() -> None:
    steps = {step for pathway in library().pathways.values() for step in pathway.steps}
    acts, findings = library().shared.acts, {*library().shared.findings, *GOOD}
    for each in SITUATIONS:
        assert {*each.does.split(), *each.never.split()} <= set(acts), each.says
        assert set(each.found) <= findings | steps, each.says


def test_every_step_is_walked_in_some_situation() -> None:
    """Branches go on silently, so that they are walked with what stands behind them."""
    walked = {place for each in SITUATIONS for place in each.walk().steps}
    for pathway in library().pathways.values():
        steps = [step.id for step in pathway.steps.values() if not isinstance(step, Branch)]
        assert [step for step in steps if (pathway.id, step) not in walked] == []


@pytest.mark.parametrize(
    "wrong",
    [
        {"ends": "loose-lens"},
        {"lens": "L4"},
        {"does": "cut-vitreous"},
        {"does": "place-lens-in-sulcus announce-rupture"},
        {"never": "announce-rupture"},
        {"plans": "Never said"},
        {"cuts": 1},
    ],
    ids=str,
)
def test_a_situation_told_wrong_is_found_out(wrong: dict[str, str]) -> None:
    right: dict[str, str] = {"ends": "lens-in-vitreous-kept"}
    assert Situation("as usual", {}, **right).faults() == []
    assert Situation("as usual", {}, **{**right, **wrong}).faults() != []
