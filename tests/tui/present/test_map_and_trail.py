from __future__ import annotations

from chamberwise.tui.present.map_page import around, phase_steps
from chamberwise.tui.present.parts import text_lines
from chamberwise.tui.present.trail import trail

from tests.tui.stage import walked


def test_the_map_shows_two_steps_back_here_and_what_follows() -> None:
    lines = text_lines(around(walked(("fast", "done", "calm", "done"))), 100)
    assert lines[1:4] == [
        "  3  Is the patient comfortable? -> Calm",
        "  4  Hydrate both edges of the wound -> done",
        "> 5  YOU ARE HERE: Does the wound leak now? (question)",
    ]
    assert "     -> It still leaks: Hydrate both edges of the wound (action)" in lines
    assert "          -> after 2 times: Suture the main wound (action)" in lines


def test_a_phase_marks_where_the_walk_was_and_is() -> None:
    lines = text_lines(phase_steps(walked(("fast",)), "look"), 100)
    assert lines[0] == "Phase 1 of 2: Look at the wound"
    assert any(line.startswith("* been here: Does the main wound leak?") for line in lines)
    assert any(line.startswith("> YOU ARE HERE: Hold still") for line in lines)


def test_the_trail_is_the_way_back() -> None:
    rows = trail(walked(("fast", "done", "calm")))
    assert [(row.number, row.answer) for row in rows] == [(1, "Fast"), (2, "done"), (3, "Calm")]
