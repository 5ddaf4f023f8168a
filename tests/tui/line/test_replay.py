"""A replay in line mode."""

from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.engine.proof.verdict import Violated
from chamberwise.tui.replay import broken_on, sit_down_to_replay
from chamberwise.tui.sitting import Sitting

from tests.exports.proof.stage import NOT_TOLD, PATHWAY, PROOF, TO_THE_SUTURE, loaded, walked
from tests.tui.golden import assert_as_kept
from tests.tui.line.talking import transcript
from tests.tui.stage import Ticking

KEPT = Path(__file__).parent / "transcripts"


def replay(typed: str = TO_THE_SUTURE) -> Sitting:
    return sit_down_to_replay(loaded(), PATHWAY, walked(typed), Ticking())


def said(text: str) -> str:
    return " ".join(text.split())


def test_enter_goes_through_the_walk_to_where_the_rule_breaks() -> None:
    text = transcript(*[""] * 6, "q", walk=replay("fast, done, sore, done, done, sore"))
    assert_as_kept(KEPT / "replay.txt", text)


def test_each_enter_or_redo_makes_one_move() -> None:
    walk = replay()
    transcript("", "y", "redo", "", walk=walk)
    assert [leg.move for leg in walk.walk.legs] == list(walked(TO_THE_SUTURE)[:4])


def test_the_rule_is_named_at_the_step_that_breaks_it_and_not_before() -> None:
    before = said(transcript(*[""] * 4, walk=replay()))
    assert "a rule breaks" not in before
    there = said(transcript(*[""] * 5, walk=replay()))
    assert "Here a rule breaks: No suture in a chamber that may be flat." in there
    beyond = said(transcript(*[""] * 6, walk=replay()))
    assert "In step 6 a rule breaks: No suture in a chamber that may be flat." in beyond


def test_another_answer_leaves_the_replay_and_undo_comes_back() -> None:
    text = said(transcript("none", "u", "", walk=replay()))
    assert "You have left the replay; u takes your own steps back." in text
    assert text.count("Replay: Enter answers “Slow” (6 moves left).") == 2
    assert "Replay: Enter goes on (5 moves left)." in text


def test_leaving_says_that_a_replay_is_not_kept() -> None:
    assert "A replay is not kept." in transcript("", "q", walk=replay())


def test_a_walk_that_breaks_nothing_is_replayed_without_a_word_on_rules() -> None:
    walk = sit_down_to_replay(loaded(), PATHWAY, walked("none, deep"), Ticking())
    assert walk.broken == ()
    assert "a rule breaks" not in transcript("", "", walk=walk)


@pytest.mark.parametrize("verdict", [each for each in PROOF.verdicts if isinstance(each, Violated)])
def test_every_rule_that_a_walk_breaks_is_known(verdict: Violated) -> None:
    broken = broken_on(loaded(), PATHWAY, verdict.counterexample.moves)
    assert verdict.rule.title in [each.title for each in broken]


def test_the_walk_of_a_rule_broken_at_the_end_names_it_at_the_end() -> None:
    broken = broken_on(loaded(), PATHWAY, walked(NOT_TOLD))
    assert [each.step for each in broken if each.title.endswith("is told so")] == [7]
