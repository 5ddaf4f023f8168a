"""What is told of single changes, in words that a reader can compare."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.model.drill import Authored
from chamberwise.engine.reading.build_drill import drill_book
from chamberwise.exports.comparing.content import DrillShown
from chamberwise.exports.comparing.extract import comparison_shown
from chamberwise.exports.comparing.text import comparison_text

from tests.engine.comparing.versions import PATHWAY, compared
from tests.support.build import TODAY


def test_a_rule_that_asks_for_something_else_is_told_by_what_it_asks() -> None:
    edit = ("{outcome: [closed], unless known: [depth]}", "{outcome: refer}")
    (change,) = comparison_shown(compared(edit), TODAY).changes
    assert change.was != change.now
    assert "Referred the same day" in change.now
    assert "Chamber depth" in change.was


def test_a_way_on_is_told_by_the_words_of_both_steps() -> None:
    (change,) = comparison_shown(compared(("inside: how-deep\n", "inside: refer\n")), TODAY).changes
    assert change.where == "At “Is iris in the wound?” (where-is-the-iris), answer `inside`"
    assert change.was == "“Is the chamber deep?” (how-deep)"
    assert change.now == "“Referred the same day” (refer)"


def test_cases_with_another_outcome_are_counted_with_one_of_them() -> None:
    shown = comparison_shown(compared(("inside: how-deep\n", "inside: refer\n")), TODAY)
    assert sum(each.count for each in shown.cases) == 3
    assert "ends: Referred the same day" in shown.cases[0].now
    assert "CASES" in comparison_text(shown)


def test_no_line_is_wider_than_78_columns() -> None:
    shown = comparison_shown(compared(("inside: how-deep\n", "inside: refer\n")), TODAY)
    assert max(map(len, comparison_text(shown).splitlines())) <= 78


def test_scenarios_are_named_where_there_is_something_to_rehearse() -> None:
    authored = Authored("first-minute", "The first minute", "nucleus")
    book = replace(drill_book({}), scenarios=(authored,))
    acted = compared(("does: Withdraw the tip.", "does: Advance the tip."))
    assert comparison_shown(acted, TODAY, {PATHWAY: book}).drills == (
        DrillShown(PATHWAY, "first-minute", "The first minute"),
    )
    spelt = compared(("Sweep the iris from", "Sweep the  iris from"))
    assert comparison_shown(spelt, TODAY, {PATHWAY: book}).drills == ()
