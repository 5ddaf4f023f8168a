"""Role cards: every line of every duty stands on its card, at its time."""

from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.engine.model.step import Action, Outcome
from chamberwise.exports.roles.content import IN_THIS_ORDER, NO_TIMES
from chamberwise.exports.roles.extract import role_cards
from chamberwise.exports.roles.make import make
from chamberwise.exports.roles.text import text

from tests.exports.flow.small import small
from tests.exports.flow.stage import FLAGSHIP, order, printed, shipped, words
from tests.tui.golden import assert_as_kept

HERE = Path(__file__).resolve().parent


def test_text_of_small_cards_to_the_letter() -> None:
    assert_as_kept(HERE / "small.txt", text(role_cards(small(), "small")))


def test_tasks_stand_where_their_targets_add_up_to() -> None:
    surgeon, nurse = role_cards(small(), "small")
    held = [(part.title, [task.text for task in part.tasks]) for part in surgeon.opening]
    assert held == [
        ("0 to 10\u00a0s", ["Stop."]),
        ("10 to 30\u00a0s", ["“Help please.”"]),
        ("After 60\u00a0s", ["Give 10 mg per mL in 2 mL by local protocol over the next 30 s."]),
    ]
    assert nurse.heard == ("Help please.",)
    assert nurse.missing == ("Box",)
    assert nurse.missing_later == ("Suture",)
    assert surgeon.unset == ("drops",)


def test_without_a_target_for_each_no_seconds_are_told() -> None:
    surgeon, nurse = role_cards(small(timed=False), "small")
    assert [part.title for part in surgeon.opening] == [IN_THIS_ORDER]
    assert [part.title for part in nurse.opening] == [IN_THIS_ORDER]
    made = make(order(small(timed=False), "small"))
    assert NO_TIMES in made.told
    said = printed(made.pages)
    assert said.count(NO_TIMES) == 2
    assert "0 to 10" not in said


@pytest.mark.parametrize("name", list(shipped().pathways))
def test_every_line_of_a_pathway_is_on_the_card_of_its_duty(name: str) -> None:
    own = shipped().pathways[name]
    titles = {each.title: duty for duty, each in shipped().words(name).duties.items()}
    cards = {titles[card.duty]: card for card in role_cards(shipped(), name)}
    for step in own.steps.values():
        lines = step.lines if isinstance(step, Action) else ()
        lines = step.owed if isinstance(step, Outcome) else lines
        for line in lines:
            assert line.text in text([cards[line.who]]), (step.id, line.text)


@pytest.mark.parametrize("name", list(shipped().pathways))
def test_all_that_a_card_says_is_printed(name: str) -> None:
    made = make(order(shipped(), name))
    said = [each for page in made.pages for each in words(page)]
    for card in role_cards(shipped(), name):
        for part in card.opening:
            for task in part.tasks:
                assert task.text in said
        for part in card.later:
            for task in part.tasks:
                assert f"{task.step}: {task.text}" in said
        assert {*card.words, *card.missing, *card.missing_later, *card.unset} <= set(said)


def test_cards_of_one_duty_are_counted() -> None:
    said = printed(make(order(shipped(), FLAGSHIP)).pages)
    cards = sum(line.startswith("Posterior capsule rupture, card") for line in said.splitlines())
    assert "Posterior capsule rupture, card 1 of " in said
    assert cards >= 2
