from __future__ import annotations

from datetime import timedelta

from chamberwise.engine.walk.walk import note, resumed, undo
from chamberwise.tui.present.clock import clocks, step_seconds, walk_seconds

from tests.tui.stage import walked


def test_a_passed_target_is_told_by_a_word() -> None:
    walk = walked(("fast",))
    at = walk.journal[-1].at
    assert clocks(walk, at + timedelta(seconds=30))[1] == "step 00:30, target 30 s"
    assert clocks(walk, at + timedelta(seconds=31))[1] == "step 00:31 PAST TARGET 30 s"


def test_a_pause_between_sittings_does_not_count() -> None:
    walk = walked(("fast",))
    later = walk.journal[-1].at + timedelta(hours=8)
    again = resumed(walk, later)
    assert walk_seconds(again, later + timedelta(seconds=5)) == 6
    assert step_seconds(again, later + timedelta(seconds=5)) == 5


def test_a_note_does_not_restart_the_step_and_an_undo_does() -> None:
    walk = walked(("fast",))
    at = walk.journal[-1].at
    noted = note(walk, "x", at + timedelta(seconds=9))
    assert step_seconds(noted, at + timedelta(seconds=10)) == 10
    back = undo(noted, at + timedelta(seconds=20))
    assert step_seconds(back, at + timedelta(seconds=21)) == 1


def test_the_clock_stops_at_the_end() -> None:
    walk = walked(("none", "deep"))
    at = walk.journal[-1].at
    assert clocks(walk, at + timedelta(hours=1)) == ("walk 00:02", "")
