"""What is told of single changes, in words that a reader can compare."""

from __future__ import annotations

from chamberwise.exports.comparing.extract import comparison_shown
from chamberwise.exports.comparing.text import comparison_text

from tests.engine.comparing.versions import compared
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
