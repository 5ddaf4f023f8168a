"""`chamberwise work`: what is typed, what comes out, and what is refused."""

from __future__ import annotations

import csv
import io
import json
import sys
from pathlib import Path

import icalendar
import pytest
from chamberwise.engine.working.form import STANDING
from chamberwise.engine.working.registry import NAMES, calculation
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

from tests.conformance.working_out import example

EYE = ["AL=23.5", "K=7.7 mm", "A=118.7", "target=-0.25"]
Seen = pytest.CaptureFixture[str]


def typed(name: str) -> list[str]:
    return [f"{key}={value}" for key, value in example(calculation(name)).items()]


def test_without_a_name_every_calculation_is_listed(capsys: Seen) -> None:
    assert run(["work"]) == Status.CLEAN
    told = capsys.readouterr().out
    assert all(f"{name} " in told for name in NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_a_calculation_describes_itself(name: str, capsys: Seen) -> None:
    assert run(["work", name, "--inputs"]) == Status.CLEAN
    told = capsys.readouterr().out
    assert all(each.name in told for each in calculation(name).inputs)
    assert f"chamberwise work {name} " in told


@pytest.mark.parametrize("name", NAMES)
def test_every_working_says_what_it_stands_for(name: str, capsys: Seen) -> None:
    assert run(["work", name, *typed(name)]) == Status.CLEAN
    told = " ".join(capsys.readouterr().out.split())
    assert all(told.count(each) == 2 for each in STANDING)
    for part in ("Given", "Result", "Working", "It does not know", "Caution", "Sources"):
        assert f" {part} " in told
    assert max(map(len, capsys.readouterr().out.splitlines()), default=0) <= 78


def test_json_and_csv_tell_the_same_figures(capsys: Seen) -> None:
    assert run(["work", "srk-t", *EYE, "--format", "json"]) == Status.CLEAN
    told = json.loads(capsys.readouterr().out)
    results = {each["name"]: each["value"] for each in told["results"]}
    assert run(["work", "srk-t", *EYE, "--format", "csv"]) == Status.CLEAN
    rows = list(csv.DictReader(io.StringIO(capsys.readouterr().out)))
    assert {row["name"]: row["value"] for row in rows if row["part"] == "result"} == results
    assert results["power"] == "20.94"
    assert [row["title"] for row in rows if row["part"] == "standing"] == list(STANDING)
    assert {"marks", "read"} >= {each["mark"] for each in told["sources"]}


def test_no_cell_can_be_taken_for_a_formula(capsys: Seen) -> None:
    run(["work", "srk-t", *EYE, "--format", "csv"])
    cells = [cell for row in csv.reader(io.StringIO(capsys.readouterr().out)) for cell in row]
    assert not [each for each in cells if each.startswith(("=", "@")) or each[:2] in ("+c", "-c")]


def test_what_is_refused_says_why_and_gives_no_figure(capsys: Seen) -> None:
    assert run(["work", "srk-t", "AL=23.5", "K=7.7", "A=118.7", "target=0"]) == Status.UNUSABLE
    told = capsys.readouterr()
    assert told.out == ""
    assert 'K="7.7 mm"' in told.err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["srkt"], "Did you mean `srk-t`?"),
        (["srk-t", "23.5"], "no INPUT=VALUE"),
        (["srk-t", "K=43", "K=44"], "given twice"),
        (["srk-t", *EYE, "--calendar", "x.ics"], "gives no days"),
    ],
)
def test_what_cannot_be_used(words: list[str], said: str, capsys: Seen) -> None:
    assert run(["work", *words]) == Status.UNUSABLE
    assert said in capsys.readouterr().err


def test_days_go_into_a_calendar_and_the_same_ones_give_the_same_bytes(
    tmp_path: Path, capsys: Seen
) -> None:
    paths = [tmp_path / "one.ics", tmp_path / "two.ics"]
    for path in paths:
        assert (
            run(["work", "after-care-dates", *typed("after-care-dates"), "--calendar", str(path)])
            == 0
        )
    assert paths[0].read_bytes() == paths[1].read_bytes()
    events = icalendar.Calendar.from_ical(paths[0].read_bytes()).walk("VEVENT")
    assert [each.start.isoformat() for each in events] == ["2028-02-26", "2028-03-03", "2028-03-24"]
    assert all("Follow local protocol" in str(each["description"]) for each in events)


def test_a_calendar_that_cannot_be_written(tmp_path: Path, capsys: Seen) -> None:
    words = ["work", "after-care-dates", *typed("after-care-dates"), "--calendar", str(tmp_path)]
    assert run(words) == Status.UNUSABLE
    assert "is a folder. Name a file in it." in capsys.readouterr().err


def test_a_calendar_is_written_over_no_other_file(tmp_path: Path, capsys: Seen) -> None:
    path = tmp_path / "notes.ics"
    words = ["work", "after-care-dates", *typed("after-care-dates"), "--calendar", str(path)]
    path.write_text("my notes")
    assert run(words) == Status.UNUSABLE
    assert "no calendar of ours" in capsys.readouterr().err
    assert path.read_text() == "my notes"
    path.unlink()
    assert run(words) == run(words) == 0


def test_asking_line_by_line(monkeypatch: pytest.MonkeyPatch, capsys: Seen) -> None:
    monkeypatch.setattr(sys, "stdin", io.StringIO("23.5\n7.7\n7.7 mm\n118.7\n-0.25\n"))
    assert run(["work", "srk-t", "--ask"]) == Status.CLEAN
    told = capsys.readouterr()
    assert "refused: `keratometry` is 7.7 D" in told.err
    assert "20.94 D" in told.out


def test_asking_is_not_guessing(monkeypatch: pytest.MonkeyPatch, capsys: Seen) -> None:
    monkeypatch.setattr(sys, "stdin", io.StringIO(""))
    assert run(["work", "srk-t", "--ask", "AL=23.5"]) == Status.UNUSABLE
    assert "`keratometry` is missing" in capsys.readouterr().err


def test_a_times_sign_is_never_lost(monkeypatch: pytest.MonkeyPatch) -> None:
    made = io.TextIOWrapper(io.BytesIO(), encoding="ascii", errors="replace")
    monkeypatch.setattr(sys, "stdout", made)
    assert run(["work", "srk-t", *EYE]) == Status.CLEAN
    made.flush()
    told = made.buffer.getvalue().decode()  # type: ignore[attr-defined]
    assert "0.58412 * 23.5" in told
    assert "?" not in told.partition("Sources")[0]
