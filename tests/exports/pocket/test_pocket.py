"""The pocket card: what is on it, and what is cut by rule and told."""

from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.exports.paper.sheet import Arrow, Role
from chamberwise.exports.pocket.content import MOST_DECISIONS
from chamberwise.exports.pocket.extract import pocket_card
from chamberwise.exports.pocket.make import make
from chamberwise.exports.pocket.text import text

from tests.exports.flow.small import small
from tests.exports.flow.stage import FLAGSHIP, order, printed, shipped, words
from tests.support.build import ask, do, end, finding, library, pathway
from tests.tui.golden import assert_as_kept

HERE = Path(__file__).resolve().parent


def test_text_of_a_small_card_to_the_letter() -> None:
    assert_as_kept(HERE / "small.txt", text(pocket_card(small(), "small")))


def test_all_of_a_small_card_is_printed_once() -> None:
    made = make(order(small(), "small"))
    card = pocket_card(small(), "small")
    said = words(made.pages[0])
    assert said.count(card.title) == 1
    for action in card.first:
        assert said.count(action.headline) == 1
    for decision in card.decisions:
        assert said.count(decision.question) == 1
        for each in decision.exits:
            told = f"{each.answers}: {each.leads}.".replace("\u00a0", " ")
            assert said.count(told) == 1
    assert made.told == ()


def test_answers_that_lead_alike_are_told_together_and_where() -> None:
    (decision,) = pocket_card(small(), "small").decisions
    told = {each.answers: each.leads for each in decision.exits}
    assert told == {
        "dry": "done",
        "leaking": "Pass the suture (see\u00a05)",
        "open OR cannot tell": "Change to: other",
    }


def test_what_is_left_out_is_told_on_the_card_and_to_who_prints_it() -> None:
    made = make(order(shipped(), FLAGSHIP))
    card = pocket_card(shipped(), FLAGSHIP)
    page = made.pages[0]
    shown = sum(each.role is Role.QUESTION for each in page.texts)
    assert 1 <= shown <= MOST_DECISIONS
    left = f"First decisions only; the full pathway has {card.questions - shown} more."
    assert left in printed(made.pages)
    assert left in made.told


def test_decisions_are_cut_from_the_end_and_never_above_seven() -> None:
    findings = [finding(f"f{number}", "yes no") for number in range(12)]
    steps = [
        ask(f"s{number}", f"f{number}", yes=f"s{number + 1}", no="end") for number in range(12)
    ]
    own = pathway("many", do("act", "s0"), *steps, do("s12", "end"), end("end"))
    made = make(order(library(own, findings=findings), "many"))
    asked = [each.text for each in made.pages[0].texts if each.role is Role.QUESTION]
    assert asked == [f"f{number}?" for number in range(len(asked))]
    assert len(asked) == MOST_DECISIONS
    assert "First decisions only; the full pathway has 5 more." in made.told


@pytest.mark.parametrize("name", list(shipped().pathways))
def test_each_panel_has_its_foot_and_folds_are_dashed(name: str) -> None:
    (page,) = make(order(shipped(), name)).pages
    feet = [each for each in words(page) if "Stamp 7QK2-M4XP-3." in each and "Printed" not in each]
    folds = [each for each in page.items if isinstance(each, Arrow) and each.is_dashed]
    assert (len(feet), len(folds)) == (4, 3)
