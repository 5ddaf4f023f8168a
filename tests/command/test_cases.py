"""`chamberwise cases` as typed."""

from __future__ import annotations

import csv
import json
from io import StringIO
from pathlib import Path

import pytest
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

Said = pytest.CaptureFixture[str]
LIBRARY = Path(__file__).resolve().parents[1] / "library"
ASKED = ["cases", "--library", str(LIBRARY), "shallow-chamber"]


def test_json_and_csv_have_a_row_a_combination(capsys: Said) -> None:
    run([*ASKED, "--format", "json"])
    said = capsys.readouterr()
    rows = json.loads(said.out)
    findings = [tuple(row["findings"].items()) for row in rows]
    assert len(set(findings)) == len(rows) > 1
    assert f"{len(rows)} combinations" in said.err
    run([*ASKED, "--format", "csv"])
    assert len(list(csv.reader(StringIO(capsys.readouterr().out)))) == len(rows) + 1


def test_text_puts_equal_rows_together_unless_all_are_asked_for(capsys: Said) -> None:
    run(ASKED)
    short = capsys.readouterr()
    run([*ASKED, "--all"])
    whole = capsys.readouterr()
    assert len(short.out) <= len(whole.out)
    combinations = int(whole.err.split()[0])
    assert whole.err == f"{combinations} combinations, {combinations} rows.\n"
    assert short.err.startswith(f"{combinations} combinations, ")


def test_cannot_tell_adds_a_value_to_every_finding(capsys: Said) -> None:
    run([*ASKED, "--format", "json"])
    fewer = json.loads(capsys.readouterr().out)
    run([*ASKED, "--format", "json", "--cannot-tell"])
    more = json.loads(capsys.readouterr().out)
    values = {value for row in more for value in row["findings"].values()}
    assert len(more) > len(fewer)
    assert "cannot tell" in values


@pytest.mark.parametrize("assumed", ["nonsense", "leak", "leak=", "leak=wet", "nothing=none"])
def test_an_assumption_that_is_none_is_refused(assumed: str, capsys: Said) -> None:
    assert run([*ASKED, "--assume", assumed]) == Status.UNUSABLE
    said = capsys.readouterr()
    assert said.out == ""
    assert "names no finding and value" in said.err


def test_every_walk_tells_where_a_case_may_end_and_holds_where_it_does(capsys: Said) -> None:
    run([*ASKED, "--format", "json"])
    plain = json.loads(capsys.readouterr().out)
    run([*ASKED, "--format", "json", "--every-walk"])
    rows = json.loads(capsys.readouterr().out)
    assert [{**row, "may end in": None} for row in rows] == [
        {**row, "may end in": None} for row in plain
    ]
    assert all("may end in" not in row for row in plain)
    for row in rows:
        assert row["steps"][-1] in row["may end in"]


@pytest.mark.parametrize("form", ["text", "csv"])
def test_every_walk_is_for_programs(form: str, capsys: Said) -> None:
    assert run([*ASKED, "--every-walk", "--format", form]) == Status.UNUSABLE
    said = capsys.readouterr()
    assert said.out == ""
    assert "`--every-walk` needs `--format json`" in said.err


def test_an_impossible_case_without_a_second_look_is_open(capsys: Said) -> None:
    """Iris in the wound that does not leak is declared impossible, and nothing looks again."""
    assert run(ASKED) == Status.FINDINGS
    said = capsys.readouterr().out
    assert "PROBLEM: declared impossible, yet not looked at again" in said
    assert "1 open." in " ".join(said.split())


def test_a_table_with_nothing_open_is_clean(tmp_path: Path, capsys: Said) -> None:
    path = tmp_path / "shallow-chamber.yaml"
    text = (LIBRARY / "shallow-chamber.yaml").read_text()
    declared = (
        "  impossible:\n"
        "    - {when: {leak: none, iris: outside}, because: Iris in the wound holds it open.}\n"
    )
    assert declared in text
    path.write_text(text.replace(declared, ""))
    assert run(["cases", "--library", str(LIBRARY), str(path)]) == Status.CLEAN
    assert "0 are declared impossible" in " ".join(capsys.readouterr().out.split())


def test_a_case_without_an_outcome_is_a_finding(tmp_path: Path, capsys: Said) -> None:
    path = tmp_path / "shallow-chamber.yaml"
    text = (LIBRARY / "shallow-chamber.yaml").read_text()
    path.write_text(text.replace("  assume: {lids: loose, depth: deep}\n", ""))
    assert run(["cases", "--library", str(LIBRARY), str(path)]) == Status.FINDINGS
    assert "PROBLEM: " in capsys.readouterr().out


def test_a_pathway_without_a_table_says_so(capsys: Said) -> None:
    asked = ["cases", "--library", str(LIBRARY), "pressing-lids"]
    assert run(asked) == Status.UNUSABLE
    assert "has no table of cases" in capsys.readouterr().err


def test_a_pathway_that_cannot_be_walked_says_why(tmp_path: Path, capsys: Said) -> None:
    path = tmp_path / "shallow-chamber.yaml"
    text = (LIBRARY / "shallow-chamber.yaml").read_text()
    path.write_text(text.replace("start: ", "start: no-such-"))
    assert run(["cases", "--library", str(LIBRARY), str(path)]) == Status.UNUSABLE
    said = capsys.readouterr()
    assert said.out == ""
    assert "no-entry" in said.err
    assert "cannot be walked" in said.err
