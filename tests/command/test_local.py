"""A local sheet at the command line: every command that takes a pathway takes one."""

from __future__ import annotations

import json
import shlex
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from chamberwise.engine.local.localising import localised
from chamberwise.engine.reading.library import load_library, read_file
from chamberwise.exports.full.extract import full_pathway
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

from tests.engine.local.stage import BELOW, HERE, edited

Said = pytest.CaptureFixture[str]
GOOD = HERE / "sheets" / "everything.yaml"
BELOW_IT = ["--library", str(BELOW)]
UNDER = [*BELOW_IT, "--local", str(GOOD)]


@pytest.fixture(autouse=True)
def _home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path / "home"))


@pytest.mark.parametrize("words", [[str(GOOD), *BELOW_IT], ["leaking-wound", *UNDER], UNDER])
def test_check_and_prove_know_a_sheet_by_its_head(words: list[str], capsys: Said) -> None:
    assert run(["check", *words, "--on", "2026-11-25"]) == Status.CLEAN, capsys.readouterr().out
    assert run(["prove", *words]) == Status.CLEAN
    assert "Leaking wound at the end of surgery (leaking-wound, edition 0.1" in (
        capsys.readouterr().out
    )


def test_a_broken_rule_names_the_line_of_the_sheet_and_shows_the_walk(
    tmp_path: Path, capsys: Said
) -> None:
    path = tmp_path / "one-line.yaml"
    file = edited("one-line", ("choices:", "changes:\n  - CHANGE\nchoices:"))
    change = "{change: steps / look-again / answers / none, expects: tell, to: closed, because: X.}"
    path.write_text(file.text.replace("CHANGE", change))
    line = next(n for n, each in enumerate(path.read_text().splitlines(), 1) if "{change" in each)
    assert run(["prove", str(path), *BELOW_IT]) == Status.FINDINGS
    said = capsys.readouterr().out
    assert f"one-line.yaml:{line}:" in said.replace("\n            ", "")
    assert "A shortest walk that breaks it:" in said
    assert run(["prove", str(path), *BELOW_IT, "--format", "json"]) == Status.FINDINGS
    told = json.loads(capsys.readouterr().out)["pathways"][0]["rules"]
    (broken,) = (each for each in told if each["verdict"] == "broken")
    assert [place.split(":")[-2] for place in broken["brought by"]] == [str(line)]
    replay = shlex.split(broken["counterexample"]["replay"])[1:]
    assert replay[-2] == "--local"
    command = [sys.executable, "-m", "chamberwise.tui.command.main", *replay, "--plain"]
    done = subprocess.run(command, input="\n" * 30, capture_output=True, text=True, check=False)
    assert done.returncode == Status.CLEAN, done.stderr
    assert "a rule breaks" in done.stdout


def test_walk_and_cases_go_by_the_sheet(tmp_path: Path, capsys: Said) -> None:
    answers = tmp_path / "answers.txt"
    answers.write_text("done\nnone\ndone\ndone\n")
    words = ["walk", "leaking-wound", *UNDER, "--answers", str(answers)]
    assert run(words) == Status.CLEAN
    said = " ".join(capsys.readouterr().out.split())
    assert "Your wound is closed and we are nearly done." in said
    assert "Write the time on the board." in said
    assert "Call the senior surgeon. (extension X1, by day; otherwise extension X2)" in said
    assert run(["cases", "leaking-wound", *UNDER]) == Status.UNUSABLE


def test_print_shows_what_the_unit_set_beside_what_it_has_not(capsys: Said) -> None:
    words = ["print", "leaking-wound", *UNDER, "--format", "text"]
    assert run([*words, "--what", "kit-list"]) == Status.CLEAN
    said = capsys.readouterr().out
    assert "here: Nylon N" in said
    assert "lies: Trolley in theatre 2, top, 20 s to fetch" in said
    assert "here: NOT SET LOCALLY" in said
    assert "Fill the chamber: page FILL" in said
    assert "Harbour Eye Unit" in said
    assert "edition 0.1 over edition 2" in said


def test_the_full_pathway_says_why_and_by_what_method() -> None:
    library = localised(load_library(BELOW), read_file(GOOD)).library
    fill = next(each for each in full_pathway(library, "leaking-wound").steps if each.target)
    assert fill.target == "45\u00a0s (Median of six rehearsals.)"
    assert fill.choices[0].is_set
    assert fill.choices[0].positions[0].endswith("Because: The unit has no air filter.")
    suture = next(each for each in full_pathway(library, "leaking-wound").steps if each.number == 4)
    assert any("(Nylon N; Trolley in theatre 2, top, 20" in each for each in suture.needs)


def test_a_stamp_of_a_sheet_is_known_and_superseded_once_the_sheet_changes(
    tmp_path: Path, capsys: Said
) -> None:
    path = tmp_path / "everything.yaml"
    path.write_text(GOOD.read_text())
    out = str(tmp_path / "kit.pdf")
    words = ["print", str(path), *BELOW_IT, "--what", "kit-list", "--out", out]
    assert run(words) == Status.CLEAN, capsys.readouterr().err
    code = capsys.readouterr().err.split("Stamp of the kit list: ")[1].split()[0]
    assert run(["stamp", code, *BELOW_IT]) == Status.CLEAN
    path.write_text(GOOD.read_text().replace("extension X1", "extension X9"))
    assert run(["stamp", code, *BELOW_IT]) == Status.FINDINGS
    assert "superseded" in capsys.readouterr().out.lower()


def test_nothing_is_walked_or_printed_under_a_sheet_with_an_error(capsys: Said) -> None:
    stale = str(HERE / "sheets" / "stale-text.yaml")
    for words in (["walk"], ["print"], ["prove"], ["cases"], ["approve", "--by", "Lead"]):
        asked = [words[0], "leaking-wound", *BELOW_IT, "--local", stale, *words[1:]]
        if words[0] == "approve":
            asked = ["approve", stale, *BELOW_IT, *words[1:]]
        assert run(asked) == Status.UNUSABLE
        assert "stale-expectation" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "part"),
    [
        (["check", "--local", "no-such.yaml"], "There is no file no-such.yaml"),
        (["check", "--local", str(BELOW / "leaking-wound.yaml")], "is no local sheet"),
        (["check", str(GOOD), str(HERE / "sheets" / "one-line.yaml")], "One local sheet at a time"),
    ],
)
def test_what_is_no_sheet_is_said(words: list[str], part: str, capsys: Said) -> None:
    assert run([*words, *BELOW_IT]) == Status.UNUSABLE
    assert part in capsys.readouterr().err


def test_approve_lists_all_that_is_against_it_and_writes_nothing(
    tmp_path: Path, capsys: Said
) -> None:
    path = tmp_path / "step-taken-away.yaml"
    text = (HERE / "sheets" / "step-taken-away.yaml").read_text()
    path.write_text(text)
    assert run(["approve", str(path), "--by", "theatre educator", *BELOW_IT]) == Status.FINDINGS
    said = capsys.readouterr().err
    assert "is among the authors" in said
    assert "write `edition: 1`" in said
    assert "`air-or-fluid` is not chosen" in said
    assert path.read_text() == text


def test_approve_writes_its_lines_and_an_edit_ends_it(tmp_path: Path, capsys: Said) -> None:
    path = tmp_path / "everything.yaml"
    text = GOOD.read_text().replace("edition: 0.1", "edition: 1")
    path.write_bytes(b"\xef\xbb\xbf" + text.replace("\n", "\r\n").encode())
    asked = ["approve", str(path), "--by", "Clinical lead", "--on", "2026-11-26", *BELOW_IT]
    assert run(asked) == Status.CLEAN, capsys.readouterr().err
    written = path.read_bytes()
    assert written.startswith(b"\xef\xbb\xbfloc")
    assert written.count(b"\n") == written.count(b"\r\n")
    assert run(["check", str(path), *BELOW_IT, "--on", "2026-11-26"]) == Status.CLEAN
    assert run(["list", "--local", str(path), *BELOW_IT]) == Status.CLEAN
    assert "approved" in capsys.readouterr().out
    path.write_bytes(written.replace(b"page FILL", b"page FULL"))
    assert run(["check", str(path), *BELOW_IT, "--on", "2026-11-26"]) == Status.FINDINGS
    assert "changed since it was approved: `machine`" in capsys.readouterr().out
    assert run(["list", "--local", str(path), *BELOW_IT]) == Status.CLEAN
    assert "DRAFT (edited since approval)" in capsys.readouterr().out


def test_an_approval_is_never_of_a_day_to_come(capsys: Said) -> None:
    asked = ["approve", str(GOOD), "--by", "Clinical lead", "--on", "2999-01-01", *BELOW_IT]
    assert run(asked) == Status.UNUSABLE
    assert "still to come" in capsys.readouterr().err


def test_new_over_writes_a_sheet_that_checks(tmp_path: Path, capsys: Said) -> None:
    asked = ["new", "our-unit", "--over", "leaking-wound", "--out", str(tmp_path), *BELOW_IT]
    assert run([*asked, "--unit", 'The "new": unit']) == Status.CLEAN
    path = tmp_path / "our-unit.yaml"
    assert run(["check", str(path), *BELOW_IT]) == Status.CLEAN, capsys.readouterr().out
    text = path.read_text()
    assert "#   call-for-help:" in text
    assert "#   cannula:" in text
    assert "#   air-or-fluid: {chosen: , because: }" in text
    assert run(asked) == Status.UNUSABLE
    assert path.read_text() == text
    assert run(["new", "x", "--over", "leaking-wnd", *BELOW_IT]) == Status.UNUSABLE
    assert "Did you mean `leaking-wound`?" in capsys.readouterr().err


def test_a_sheet_among_the_pathways_is_checked_with_them_and_proved_by_name(
    tmp_path: Path, capsys: Said
) -> None:
    folder = shutil.copytree(BELOW, tmp_path / "library")
    shutil.copy(HERE / "sheets" / "stale-text.yaml", folder)
    asked = ["--library", str(folder)]
    assert run(["check", *asked, "--on", "2026-11-25"]) == Status.FINDINGS
    assert "stale-expectation" in capsys.readouterr().out
    assert run(["prove", *asked]) == Status.CLEAN
    assert run(["list", *asked]) == Status.CLEAN
    shutil.copy(GOOD, folder / "stale-text.yaml")
    assert run(["check", *asked, "--on", "2026-11-25"]) == Status.CLEAN


def test_slips_of_somebody_who_writes_a_first_sheet_are_told_with_the_way_out(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    """A head left in a remark, a colon in a phone's hours, a file named without its ending."""
    monkeypatch.chdir(tmp_path)
    head = GOOD.read_text(encoding="utf-8").partition("phones:")[0]
    told = "Take away the `#` before `phones:`, under which this line belongs."
    slips = {
        "# phones:\n  call-for-help: {number: X1, hours: by day}\n": told,
        "phones:\n  call-for-help: {number: X1, hours: Mon-Fri: 8}\n": "quote a text that holds",
    }
    for slip, advice in slips.items():
        Path("our-unit.yaml").write_text(head + slip, encoding="utf-8")
        assert run(["check", "our-unit.yaml", *BELOW_IT]) == Status.UNUSABLE
        assert advice in capsys.readouterr().out
    assert run(["check", "our-unit", *BELOW_IT]) == Status.UNUSABLE
    assert "There is a file `our-unit.yaml` here: name it so." in capsys.readouterr().err
    assert run(["check", "Our-Unit.yaml", *BELOW_IT]) == Status.UNUSABLE
    assert "Did you mean `our-unit.yaml`?" in capsys.readouterr().err


def test_a_sheet_that_is_not_carried_out_lists_nothing_as_the_units(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    sheet = tmp_path / "our-unit.yaml"
    sheet.write_bytes(b"\xff\xfe")
    assert run(["list", "--local", str(sheet)]) == Status.UNUSABLE
    said = capsys.readouterr()
    assert said.out == ""
    assert "our-unit.yaml cannot be walked until this is put right." in said.err


def test_a_folder_and_a_link_to_itself_are_no_sheets(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "folder.yaml").mkdir()
    (tmp_path / "loop.yaml").symlink_to(tmp_path / "loop.yaml")
    assert run(["check", str(tmp_path / "folder.yaml")]) == Status.UNUSABLE
    assert "folder.yaml is a folder. Name a file in it." in capsys.readouterr().err
    assert run(["approve", str(tmp_path / "loop.yaml"), "--by", "me"]) == Status.UNUSABLE
    assert "There is no file" in capsys.readouterr().err
