from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.exports.record.standing import STANDING
from chamberwise.tui.line.commands import COMMANDS
from chamberwise.tui.line.conversation import Conversation
from chamberwise.tui.line.script import ScriptError, answers_in, follow

from tests.tui.golden import assert_as_kept
from tests.tui.line.talking import conversation, transcript
from tests.tui.stage import sitting

KEPT = Path(__file__).parent / "transcripts"

WALKS = {
    "to-the-end": ("3", "", "1", "", "1", ""),
    "over-a-handover": ("fast", "done", "Sore", "", "", "calm", "", "none", ""),
    "round-the-loop": ("2", "", "2", "", "2", "", "q"),
    "back-and-forth": ("b", "f", "3", "b", "f", "b", "2", "f", "q"),
    "asking-around": (
        "3",
        "w",
        "k",
        "m",
        "n",
        "pupil small",
        "n",
        "",
        "n iris calm",
        "c",
        "r",
        "q",
    ),
    "not-understood": ("9", "what", "", "3", "1", "?", "b x", "q"),
    "cut-off": ("3",),
}


@pytest.mark.parametrize("name", WALKS)
def test_transcripts(name: str) -> None:
    assert_as_kept(KEPT / f"{name}.txt", transcript(*WALKS[name]))


@pytest.mark.parametrize("name", WALKS)
def test_every_line_is_plain_and_fits(name: str) -> None:
    said = transcript(*WALKS[name])
    lines = [line for line in said.split("\n") if not line.startswith("chamberwise walk")]
    assert all(len(line.split("<")[0]) <= 78 for line in lines)
    assert "\x1b" not in said
    assert not any(0x2500 <= ord(letter) < 0x2600 for letter in said)


def test_it_begins_and_ends_with_what_it_is_for() -> None:
    said = transcript("3", "q")
    assert said.split("\n")[1] == STANDING
    assert said.rstrip("\n").endswith(STANDING)


@pytest.mark.parametrize("typed", ["0", "5", "x", "-", "1 2", "[1]", "\x00", "１", "²"])
def test_what_is_not_understood_moves_nothing(typed: str) -> None:
    talk, stream = conversation([typed])
    talk.talk()
    assert talk.sitting.walk.legs == ()
    assert "Not understood. Valid here: 1 None; 2 Slow; 3 Fast; 4 Cannot tell" in stream.getvalue()


def test_the_prompt_is_the_last_line_until_something_is_typed() -> None:
    talk, stream = conversation([])
    seen: list[str] = []
    script = iter(["3", "k", "", "w", "q"])

    def read() -> str | None:
        seen.append(stream.getvalue().split("\n")[-1])
        stream.write("\n")
        return next(script)

    talk.read = read
    talk.talk()
    assert all(line.endswith("? for help: ") for line in seen)


def test_a_note_reminds_that_no_patient_is_named() -> None:
    assert "Never a name, number or date of birth of a patient." in transcript("n", "", "q")


@pytest.mark.parametrize("words", ["03/02/1950", "3 March 1950", "MRN 1234567", "943 476 5919"])
def test_a_note_like_a_patient_is_asked_about_once(words: str) -> None:
    for typed in (("n", words), (f"n {words}",)):
        assert f"Noted: {words}" in transcript(*typed, "y", "q")
        said = transcript(*typed, "n", "q")
        assert "This looks like a patient's date or number. Keep it? y/n:" in said
        assert "No note was kept." in said


def test_every_note_is_warned_of() -> None:
    said = transcript("n pupil 4 mm at 10:32, lens +21.5", "q")
    assert "Noted: pupil" in said
    assert "Never a name, number or date of birth of a patient." in said
    assert "Keep it?" not in said


@pytest.mark.parametrize(("back", "forth"), [("u", "y"), ("b", "f"), ("back", "forward")])
def test_both_pairs_of_letters_go_back_and_forth(back: str, forth: str) -> None:
    said = transcript("3", back, forth, "q")
    assert said.count("DO  Hold still") == 2


def test_a_walk_with_nothing_done_is_not_said_to_be_kept() -> None:
    assert "Nothing was done, so there is nothing to keep." in transcript("q")


def test_a_walk_that_cannot_be_kept_says_so_once(tmp_path: Path) -> None:
    blocked = tmp_path / "blocked"
    blocked.write_text("")
    said = transcript("3", "", "1", "q", walk=sitting(blocked / "walks"))
    assert said.count("is not kept") == 1


def test_a_kept_walk_says_how_to_go_on(tmp_path: Path) -> None:
    said = transcript("3", "q", walk=sitting(tmp_path))
    assert "\nchamberwise walk leaking-wound --resume\n" in said


def test_every_command_is_in_the_help_and_has_a_doer() -> None:
    talk, stream = conversation(["3", "?", "q"])
    talk.talk()
    for command in COMMANDS:
        assert f"  {command.letter}  {command.help}" in stream.getvalue()


def scripted(*lines: str) -> Conversation:
    talk, _ = conversation([])
    follow(talk, lines, "answers.txt")
    return talk


def test_a_script_may_use_numbers_names_and_done_and_hold_comments() -> None:
    talk = scripted("# the quick way", "", "3", "done", "  calm  ", "DONE", "none")
    assert talk.sitting.walk.is_over
    assert [line.number for line in answers_in(["#x", "", "1", " # y", "2"])] == [3, 5]


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        (("fats",), "answers.txt:1: `fats` is not offered at “Does the main wound leak?”. Did you"),
        (("done",), "answers.txt:1: `done` is not offered"),
        (("# x", "7"), "answers.txt:2: `7` is not offered"),
        (("3", "1"), "answers.txt:2: `1` stands at an action, where only `done` goes on."),
        (("none", "deep", "1"), "answers.txt:3: `1` is left over: the walk is already at its end."),
    ],
)
def test_a_script_that_does_not_fit_names_its_line(lines: tuple[str, ...], said: str) -> None:
    with pytest.raises(ScriptError) as raised:
        scripted(*lines)
    assert said in str(raised.value)


def test_a_script_that_ends_early_stops_there() -> None:
    talk, stream = conversation([])
    follow(talk, ["3"], "-")
    assert stream.getvalue().rstrip().endswith("The answers end here.")
    assert len(talk.sitting.walk.legs) == 1
