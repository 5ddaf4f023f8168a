"""`chamberwise progress` as it is typed."""

from __future__ import annotations

import csv
import io
import json
from datetime import UTC, datetime
from pathlib import Path

import pytest
from chamberwise.engine.drill.entries import Began, Mode, NotUnderstood
from chamberwise.engine.store.home import runs_path
from chamberwise.engine.store.runs import Runs
from chamberwise.tui.command.main import run
from pypdf import PdfReader

from tests.conformance.driver import RUPTURE
from tests.exports.progress.test_progress_text import run as remembered

Said = pytest.CaptureFixture[str]


@pytest.fixture(autouse=True)
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path))
    return tmp_path


def keep(*left_out: str) -> None:
    runs = Runs(runs_path())
    began = Began(datetime(2026, 11, 25, tzinfo=UTC), "s", 1, RUPTURE, "0.1", "d", Mode.RUN)
    runs.keep([began, NotUnderstood(5, "put the thing in")], remembered(*left_out))
    runs.close()


def test_before_the_first_drill_it_says_how_to_begin(home: Path, capsys: Said) -> None:
    assert run(["progress"]) == 0
    assert "chamberwise drill" in capsys.readouterr().err
    assert list(home.iterdir()) == []


def test_it_shows_what_was_rehearsed(capsys: Said) -> None:
    keep()
    assert run(["progress"]) == 0
    said = capsys.readouterr().out
    assert said.startswith("Progress: Posterior capsule rupture\n")
    assert "1 runs that count" not in said


def test_runs_come_as_a_table_and_as_values(capsys: Said) -> None:
    keep()
    keep("fetch-box")
    assert run(["progress", "--format", "csv"]) == 0
    rows = list(csv.DictReader(io.StringIO(capsys.readouterr().out)))
    assert [row["critical acts left out"] for row in rows] == ["0", "1"]
    assert run(["progress", RUPTURE, "--format", "json"]) == 0
    values = json.loads(capsys.readouterr().out)
    assert [value["pathway"] for value in values] == [RUPTURE] * 2


def test_a_record_is_printed_on_one_page_and_never_over_another_file(
    home: Path, capsys: Said
) -> None:
    keep()
    out = home / "record.pdf"
    assert run(["progress", RUPTURE, "--print", str(out)]) == 0
    assert out.read_bytes().startswith(b"%PDF")
    assert len(PdfReader(out).pages) == 1
    assert "Record of drills" in PdfReader(out).pages[0].extract_text()
    assert run(["progress", RUPTURE, "--print", str(out)]) == 2
    assert "is there already" in capsys.readouterr().err
    assert run(["progress", "--print", str(out)]) == 2
    assert "Name it" in capsys.readouterr().err
    assert run(["progress", RUPTURE, "--print", str(home / "record.txt")]) == 2


def test_words_that_were_not_understood_are_for_the_educator(capsys: Said) -> None:
    keep()
    assert run(["progress", "--not-understood"]) == 0
    assert "put the thing in  1" in capsys.readouterr().out


def test_a_pathway_that_is_none_is_refused(capsys: Said) -> None:
    keep()
    assert run(["progress", "posterior-capsule-ruptur"]) == 2
    assert "no pathway `posterior-capsule-ruptur`" in capsys.readouterr().err


def test_a_pathway_never_drilled_has_nothing_to_show(capsys: Said) -> None:
    keep()
    assert run(["progress", "anterior-vitrectomy"]) == 0
    assert "0 runs" in capsys.readouterr().out


def test_a_broken_store_is_named_and_left_as_it_is(home: Path, capsys: Said) -> None:
    (home / "drills.db").write_text("no store " * 200)
    assert run(["progress"]) == 2
    assert "cannot be used" in capsys.readouterr().err
    assert (home / "drills.db").read_text().startswith("no store")
