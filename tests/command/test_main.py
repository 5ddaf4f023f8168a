"""The command line as typed: help, exit statuses, what goes to which stream."""

from __future__ import annotations

import argparse
import io
import json
import sys
from itertools import count
from pathlib import Path

import pytest
from chamberwise.engine.version import VERSION
from chamberwise.tui.command import watching
from chamberwise.tui.command.main import COMMANDS, run
from chamberwise.tui.command.output import product
from chamberwise.tui.command.status import Status

LIBRARY = Path(__file__).resolve().parents[1] / "library"
GOLDEN = Path(__file__).resolve().parents[1] / "golden"
ON = "--on=2026-11-25"

Said = pytest.CaptureFixture[str]
every_command = pytest.mark.parametrize("command", COMMANDS)


def typed(*words: str | Path) -> int:
    """Return the exit status of a command, argparse's own among them."""
    try:
        return run([str(word) for word in words])
    except SystemExit as end:
        return int(end.code or 0)


@pytest.mark.parametrize("flag", ["--version", "-V"])
def test_the_version(flag: str, capsys: Said) -> None:
    assert typed(flag) == Status.CLEAN
    assert capsys.readouterr() == (f"chamberwise {VERSION}\n", "")


@pytest.mark.parametrize("words", [(), *((command,) for command in COMMANDS)])
def test_help_has_an_example_and_fits_the_terminal(
    words: tuple[str, ...], capsys: Said, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    assert typed(*words, "--help") == Status.CLEAN
    said = capsys.readouterr().out
    assert "example:\n  chamberwise " in said
    assert [line for line in said.splitlines() if len(line) > 80] == []


def test_help_names_every_command_and_every_exit_status(capsys: Said) -> None:
    typed("--help")
    said = capsys.readouterr().out
    assert all(f"\n    {command} " in said for command in COMMANDS)
    assert all(str(status.value) in said for status in Status)
    assert "Follow local protocol." in said


@every_command
def test_an_option_is_never_guessed_from_its_beginning(command: str, capsys: Said) -> None:
    assert typed(command, "--hel") == Status.UNUSABLE
    assert capsys.readouterr().out == ""


@pytest.mark.parametrize(
    "words",
    [
        ("dance",),
        ("check", "--format", "poem"),
        ("check", "--on", "tomorrow"),
        ("check", "no-such-pathway"),
        ("check", "./no-such-file.yaml"),
        ("check", "--library", "./no-such-folder"),
        ("list", "--library", "./no-such-folder"),
        ("cases",),
        ("cases", "no-such-pathway"),
        ("new", "Not A Name"),
        ("walk", "no-such-pathway"),
        ("print",),
        ("print", "no-such-pathway"),
    ],
)
def test_what_cannot_be_used_ends_in_two_with_nothing_on_stdout(
    words: tuple[str, ...], capsys: Said
) -> None:
    assert typed(*words) == Status.UNUSABLE
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.strip()
    assert "Traceback" not in said.err


def test_a_clean_library_ends_in_nought(capsys: Said) -> None:
    assert typed("check", "--library", LIBRARY, ON) == Status.CLEAN
    assert capsys.readouterr().out.count("files: no problem found.") == 1


def test_findings_end_in_one(capsys: Said) -> None:
    asked = ("check", "--library", GOLDEN, ON, GOLDEN / "many-faults.yaml")
    assert typed(*asked) == Status.FINDINGS
    assert typed(*asked, "--format", "json") == Status.FINDINGS
    capsys.readouterr()


def test_an_unreadable_file_ends_in_two(tmp_path: Path, capsys: Said) -> None:
    path = tmp_path / "odd.yaml"
    path.write_text("[")
    assert typed("check", path) == Status.UNUSABLE
    assert "yaml-syntax" in capsys.readouterr().out


def test_an_interruption_ends_in_130(monkeypatch: pytest.MonkeyPatch, capsys: Said) -> None:
    def interrupted(_: argparse.Namespace, *_stood: object) -> watching.Stamps:
        raise KeyboardInterrupt

    monkeypatch.setattr(watching, "after_a_save", interrupted)
    assert typed("check", "--library", LIBRARY, ON, "--watch") == Status.INTERRUPTED
    assert capsys.readouterr().err.endswith("interrupted\n")


def test_watching_checks_again_at_every_save(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    path = tmp_path / "odd.yaml"
    path.write_text("[")
    texts = iter(["[[", "pathway: odd\n"])

    looks = count(1)

    def slept(_: float) -> None:
        if next(looks) % 2:  # the second look finds the file lying as at the first
            text = next(texts, None)
            if text is None:
                raise KeyboardInterrupt
            path.write_text(text)

    monkeypatch.setattr(watching.time, "sleep", slept)
    assert typed("check", path, "--watch") == Status.INTERRUPTED
    said = capsys.readouterr().out
    assert said.count("1 file: ") == 3
    assert "missing-key" in said


def test_a_name_nearly_right_is_suggested(capsys: Said) -> None:
    assert typed("check", "--library", LIBRARY, "shalow-chamber") == Status.UNUSABLE
    assert "Did you mean `shallow-chamber`?" in capsys.readouterr().err
    assert typed("check", "--library", LIBRARY, "xyz") == Status.UNUSABLE
    assert "`chamberwise list` shows those there are." in capsys.readouterr().err


@pytest.mark.parametrize("command", ["list", "check"])
def test_json_is_json_and_nothing_else(command: str, capsys: Said) -> None:
    assert typed(command, "--library", LIBRARY, ON, "--format", "json") == Status.CLEAN
    said = capsys.readouterr()
    assert isinstance(json.loads(said.out), list)
    assert said.err == ""


def test_the_list_tells_drafts_and_expired_ones(capsys: Said) -> None:
    asked = ("list", "--library", LIBRARY, "--format", "json")
    typed(*asked, "--on", "2026-11-25")
    now = json.loads(capsys.readouterr().out)
    typed(*asked, "--on", "2099-01-01")
    later = json.loads(capsys.readouterr().out)
    assert [row["pathway"] for row in now] == [row["pathway"] for row in later]
    assert all(row["expired"] for row in later)
    typed("list", "--library", LIBRARY, "--on", "2099-01-01")
    said = capsys.readouterr()
    assert said.out.count(" EXPIRED") == len(later)
    assert "Follow local protocol." in said.err


def test_a_file_named_stands_before_its_namesake_in_the_library(
    tmp_path: Path, capsys: Said
) -> None:
    path = tmp_path / "shallow-chamber.yaml"
    text = (LIBRARY / "shallow-chamber.yaml").read_text()
    path.write_text(text.replace("start: ", "start: no-such-"))
    assert typed("check", "--library", LIBRARY, ON, "shallow-chamber") == Status.CLEAN
    assert typed("check", "--library", LIBRARY, ON, path) == Status.FINDINGS
    assert "no-entry" in capsys.readouterr().out


def test_a_closed_pipe_is_no_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    class Closed:
        encoding = "utf-8"

        def write(self, _: str) -> None:
            raise BrokenPipeError

        def flush(self) -> None: ...
        def close(self) -> None: ...

    monkeypatch.setattr(sys, "stdout", Closed())
    monkeypatch.setattr(sys, "stderr", Closed())
    assert typed("list", "--library", LIBRARY) == Status.CLEAN


@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "cp1252"])
def test_a_terminal_with_few_letters_gets_question_marks(
    encoding: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    stream = io.TextIOWrapper(io.BytesIO(), encoding=encoding)
    monkeypatch.setattr(sys, "stdout", stream)
    product("naïve → fine")
    stream.seek(0)
    assert stream.read().endswith(" ? fine\n")


def test_what_was_mistyped_is_told_without_the_whole_usage(capsys: Said) -> None:
    assert typed("print", "x", "--what", "poster") == Status.UNUSABLE
    said = capsys.readouterr().err.splitlines()
    assert said[0].startswith("chamberwise print: argument --what: invalid choice: 'poster'")
    assert said[1:] == ["`chamberwise print --help` shows what may be typed."]


def test_an_option_that_the_command_has_not_points_to_its_own_help(capsys: Said) -> None:
    assert typed("print", "x", "--waht", "poster") == Status.UNUSABLE
    said = capsys.readouterr().err
    assert said == "Not known here: --waht poster. `chamberwise print --help` shows what is.\n"
