"""Why a drill comes next, in words: where it begins, and what nobody tried there yet."""

from __future__ import annotations

from chamberwise.exports.coverage.next_text import MOST_NAMED, next_text

from tests.engine.drill.stage import RUPTURE, shipped

LIBRARY = shipped()[0].library
ACTS = tuple(each.act for each in shipped()[1].books[RUPTURE].critical)


def test_it_names_the_stage_and_what_was_not_tried_there() -> None:
    said = " ".join(next_text(LIBRARY, RUPTURE, "cortex", ["call-for-help", "fetch-box"]))
    assert "begins at “cortex removal”" in said
    assert "call the senior surgeon; fetch the rupture box." in said
    assert "more" not in said


def test_many_are_cut_and_counted_and_no_line_is_wide() -> None:
    lines = next_text(LIBRARY, RUPTURE, "cortex", ACTS)
    assert max(map(len, lines)) <= 78
    assert f"and {len(ACTS) - MOST_NAMED} more" in " ".join(lines)


def test_where_all_was_tried_it_says_so_and_judges_nobody() -> None:
    said = " ".join(next_text(LIBRARY, RUPTURE, "cortex", []))
    assert "Every critical act was tried there" in said
    assert said.endswith("No judgement of anybody lies in it.")
