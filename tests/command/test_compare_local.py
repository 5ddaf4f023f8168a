"""`compare` of local sheets: with what lies below, with another edition, and at a revision."""

from __future__ import annotations

import shutil
from pathlib import Path

import pypdf
import pytest
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

from tests.command.test_compare import edit, git
from tests.engine.local.stage import BELOW, HERE

Said = pytest.CaptureFixture[str]
BELOW_IT = ["--library", str(BELOW), "--on", "2026-11-25"]


@pytest.fixture(autouse=True)
def _own_home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path / "home"))


@pytest.fixture
def sheet(tmp_path: Path) -> Path:
    return Path(shutil.copy(HERE / "sheets" / "everything.yaml", tmp_path / "first.yaml"))


def test_a_pathway_stands_beside_what_a_unit_made_of_it(sheet: Path, capsys: Said) -> None:
    assert run(["compare", "leaking-wound", str(sheet), *BELOW_IT]) == Status.FINDINGS
    said = capsys.readouterr().out
    assert "now: edition 0.1 over edition 2, DRAFT, Harbour Eye Unit" in said
    assert "now: extension X1, by day; otherwise extension X2" in said
    assert "a step was added" in said


def test_two_editions_of_a_sheet_differ_in_what_was_edited(sheet: Path, capsys: Said) -> None:
    second = Path(shutil.copy(sheet, sheet.with_name("second.yaml")))
    assert run(["compare", str(sheet), str(second), *BELOW_IT]) == Status.CLEAN
    edit(second, "number: extension X1", "number: extension X7")
    capsys.readouterr()
    assert run(["compare", str(sheet), str(second), *BELOW_IT]) == Status.FINDINGS
    assert "1 change: 1 safety." in capsys.readouterr().out


def test_a_sheet_that_no_longer_fits_is_refused_at_its_line(sheet: Path, capsys: Said) -> None:
    edit(sheet, "expects: Surgeon,", "expects: Operator,")
    assert run(["compare", "leaking-wound", str(sheet), *BELOW_IT]) == Status.UNUSABLE
    assert "first.yaml:28:" in capsys.readouterr().err


def test_the_paper_of_a_sheet_bears_the_name_of_the_unit(sheet: Path, tmp_path: Path) -> None:
    paper = tmp_path / "paper.pdf"
    asked = ["compare", "leaking-wound", str(sheet), *BELOW_IT, "--paper", str(paper)]
    assert run(asked) == Status.FINDINGS
    said = "".join(page.extract_text() for page in pypdf.PdfReader(paper).pages)
    assert "Harbour Eye Unit" in said
    assert "TEMPLATE" not in said


@pytest.mark.skipif(shutil.which("git") is None, reason="git is not on the path")
def test_a_sheet_is_read_as_it_stood_at_a_revision(
    sheet: Path, capsys: Said, monkeypatch: pytest.MonkeyPatch
) -> None:
    for words in (["init", "-q"], ["add", "."], ["commit", "-q", "-m", "First"]):
        git(sheet.parent, *words)
    edit(sheet, "walk: 20 s", "walk: 90 s")
    monkeypatch.chdir(sheet.parent)
    assert run(["compare", "HEAD:first.yaml", "first.yaml", *BELOW_IT]) == Status.FINDINGS
    assert "was: Trolley in theatre 2, 20 s" in capsys.readouterr().out
