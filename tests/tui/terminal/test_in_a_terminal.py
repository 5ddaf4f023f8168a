from __future__ import annotations

import re
from pathlib import Path

import pytest
from chamberwise.exports.record.standing import STANDING

from tests.tui.terminal.playing import Terminal, walk

pytest.importorskip("pty")

COLOUR = re.compile(rb"\x1b\[(?:[0-9;]*;)?(?:3[0-9]|4[0-9]|9[0-7]|10[0-7])(?:;[0-9;]*)?m")
RICH_COLOUR = re.compile(rb"\x1b\[[0-9;]*[34]8;[25]")
LEFT = (b"\x1b[?1049l", b"\x1b[?25h", b"\x1b[?1000l")


def test_answers_are_shown_and_the_terminal_is_left_clean(tmp_path: Path) -> None:
    terminal = walk(tmp_path)
    terminal.until("Does the main wound leak?")
    terminal.type("3")
    terminal.until("Hold still")
    terminal.type("q")
    assert terminal.ended() == 0
    assert all(code in terminal.raw for code in LEFT)
    after = terminal.raw.rpartition(b"\x1b[?1049l")[2].decode()
    assert "The walk is kept. To go on with it:" in after
    assert STANDING in after
    assert not RICH_COLOUR.search(terminal.raw)


def test_killed_in_the_middle_no_answer_is_lost(tmp_path: Path) -> None:
    terminal = walk(tmp_path)
    terminal.until("Does the main wound leak?")
    for key, shown in (("3", "Hold still"), ("\r", "Is the patient"), ("2", "HAND OVER")):
        terminal.type(key)
        terminal.until(shown)
    terminal.kill()
    again = walk(tmp_path, "--resume")
    shown = again.until("HAND OVER")
    assert "Step 4." in shown
    again.type("\x03")
    assert again.ended() == 130
    assert all(code in again.raw for code in LEFT)


def test_no_color_means_none(tmp_path: Path) -> None:
    terminal = walk(tmp_path, NO_COLOR="1")
    terminal.until("Does the main wound leak?")
    terminal.type("3")
    terminal.until("DANGER")
    terminal.type("n")
    terminal.until("Esc no note")
    terminal.type("\x1b")
    terminal.until("u undo")
    terminal.type("c")
    terminal.until("WHAT HAPPENED")
    terminal.type("q")
    assert terminal.ended() == 0
    assert not COLOUR.search(terminal.raw)


def test_an_empty_no_color_is_none_set(tmp_path: Path) -> None:
    terminal = walk(tmp_path, NO_COLOR="")
    terminal.until("Does the main wound leak?")
    terminal.type("3")
    terminal.until("DANGER")
    terminal.type("q")
    terminal.ended()
    assert COLOUR.search(terminal.raw)


@pytest.mark.parametrize(
    ("words", "size", "more"),
    [
        (("--plain",), (80, 24), {}),
        ((), (80, 24), {"TERM": "dumb"}),
        ((), (59, 24), {}),
        ((), (80, 19), {}),
    ],
)
def test_line_mode_where_a_screen_cannot_be(
    tmp_path: Path, words: tuple[str, ...], size: tuple[int, int], more: dict[str, str]
) -> None:
    terminal = walk(tmp_path, *words, size=size, **more)
    terminal.until("Answer 1 to 4, or ? for help:")
    terminal.type("3\n")
    terminal.until("Enter when done, or ? for help:")
    terminal.type("\x03")
    assert terminal.ended() == 130
    assert b"\x1b" not in terminal.raw
    assert b"The walk is kept." in terminal.raw
    assert b"Traceback" not in terminal.raw


def test_the_end_of_input_leaves_line_mode(tmp_path: Path) -> None:
    terminal = walk(tmp_path, "--plain")
    terminal.until("Answer 1 to 4, or ? for help:")
    terminal.type("\x04")
    assert terminal.ended() == 0


def test_one_walk_is_not_walked_in_two_terminals(tmp_path: Path) -> None:
    first = walk(tmp_path)
    first.until("Does the main wound leak?")
    first.type("3")
    first.until("Hold still")
    second = walk(tmp_path, "--resume")
    assert second.ended() == 2
    assert "open in another terminal" in second.shown
    first.type("q")
    assert first.ended() == 0


def test_plain_chamberwise_opens_the_library(tmp_path: Path) -> None:
    terminal = Terminal((), tmp_path)
    terminal.until("Chamberwise: pathways")
    terminal.type("q")
    assert terminal.ended() == 0
