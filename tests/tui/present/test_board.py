from __future__ import annotations

from chamberwise.engine.meaning.state import Freshness
from chamberwise.tui.present.board import board
from chamberwise.tui.present.panels import full_board, side_board, strip
from chamberwise.tui.present.parts import text_lines

from tests.tui.stage import walked


def test_every_state_is_told_in_words() -> None:
    rows = {row.title: row for row in board(walked(("fast", "done", "calm", "done")))}
    assert rows["Leak"].freshness is Freshness.STALE
    assert rows["Leak"].state_words == "STALE, last seen: Fast"
    assert rows["Chamber depth"].state_words == "Deep"
    assert rows["Patient comfort"].state_words == "STALE, last seen: Calm"
    assert board(walked())[0].state_words == "unknown"


def test_partly_known_is_not_known() -> None:
    rows = board(walked(("fast", "done", "calm", "done", "still-leaking")))
    assert rows[0].state_words == "partly known: Slow or Fast"


def test_choices_are_not_findings() -> None:
    assert all(row.title != "Filling the chamber" for row in board(walked(("fast",))))


def test_the_strip_tells_what_is_stale_first() -> None:
    rows = board(walked(("fast", "done", "calm", "done")))
    assert (
        strip(rows)
        == "STALE: Leak (was Fast); Patient comfort (was Calm). Known: Chamber depth: Deep"
    )
    assert strip(board(walked())) == "3 unknown"


def test_the_side_board_counts_what_it_has_no_room_to_list() -> None:
    rows = board(walked(("fast",)))
    assert text_lines(side_board(rows, 30, 20), 30)[-2:] == ["  Patient comfort", "  Chamber depth"]
    assert text_lines(side_board(rows, 30, 5), 30)[-1] == "2 unknown; k lists them"
    assert text_lines(full_board(rows), 40)[1:] == [
        "  Leak: Fast",
        "  Patient comfort: unknown",
        "  Chamber depth: unknown",
    ]
