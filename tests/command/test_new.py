"""A new pathway checks as it stands, and nothing is ever written over."""

from __future__ import annotations

import json
from collections import Counter
from io import StringIO
from pathlib import Path

import pytest
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

Said = pytest.CaptureFixture[str]
LIBRARY = Path(__file__).resolve().parents[1] / "library"


@pytest.fixture
def empty(tmp_path: Path) -> Path:
    folder = tmp_path / "library"
    folder.mkdir()
    return folder


def test_it_checks_clean_beside_the_shipped_vocabulary(tmp_path: Path, capsys: Said) -> None:
    assert run(["new", "wound-burn", "--out", str(tmp_path)]) == Status.CLEAN
    path = tmp_path / "wound-burn.yaml"
    said = capsys.readouterr()
    assert said.out == f"{path}\n"
    assert f"chamberwise check {path}" in said.err
    assert run(["check", str(path)]) == Status.CLEAN
    assert capsys.readouterr().out.startswith("1 file: no problem found.")


def test_it_proves_clean_and_comes_on_paper(tmp_path: Path, capsys: Said) -> None:
    run(["new", "wound-burn", "--out", str(tmp_path)])
    path = str(tmp_path / "wound-burn.yaml")
    assert run(["prove", path, "--format", "json"]) == Status.CLEAN
    said = capsys.readouterr().out
    proofs = json.loads(said[said.index("{") :])["pathways"]
    (own,) = [each for each in proofs if each["pathway"] == "wound-burn"]
    verdicts = Counter(rule["verdict"] for rule in own["rules"])
    assert set(verdicts) == {"holds", "does not arise"}
    assert verdicts["holds"] > 50
    for what in ("wall-chart", "pocket-card", "role-cards", "script"):
        out = ["--out", str(tmp_path), "--format", "text"]
        assert run(["print", path, "--what", what, *out]) == Status.CLEAN
    capsys.readouterr()


def test_at_a_terminal_it_asks_for_what_no_option_gives(
    empty: Path, capsys: Said, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sys.stdin", Typing("For the last stitch.\n\n"))
    asked = ["--library", str(empty), "--out", str(empty), "--title", "Burn"]
    assert run(["new", "wound-burn", *asked]) == Status.CLEAN
    said = capsys.readouterr()
    assert "is it called?" not in said.err
    assert "[Education lead]" in said.err
    text = (empty / "wound-burn.yaml").read_text(encoding="utf-8")
    assert 'summary: "For the last stitch."' in text
    assert 'authors: ["Education lead"]' in text


class Typing(StringIO):
    """What somebody types at a terminal."""

    def isatty(self) -> bool:
        return True


def test_it_checks_clean_where_there_is_no_vocabulary(empty: Path, capsys: Said) -> None:
    asked = ["--library", str(empty)]
    assert run(["new", "wound-burn", "--out", str(empty), *asked]) == Status.CLEAN
    assert run(["check", *asked]) == Status.CLEAN
    assert run(["check", *asked, "wound-burn"]) == Status.CLEAN
    capsys.readouterr()


def test_it_checks_clean_beside_another_vocabulary(tmp_path: Path, capsys: Said) -> None:
    asked = ["--library", str(LIBRARY)]
    assert run(["new", "wound-burn", "--out", str(tmp_path), *asked]) == Status.CLEAN
    assert run(["check", *asked, str(tmp_path / "wound-burn.yaml")]) == Status.CLEAN
    capsys.readouterr()


@pytest.mark.parametrize("title", ['Burn: "hot"', "# Burn", "It's 50 %", "{Burn}", "Brûlure"])
def test_any_title_is_kept_as_it_is(title: str, empty: Path, capsys: Said) -> None:
    asked = ["--library", str(empty)]
    run(["new", "wound-burn", "--title", title, "--out", str(empty), *asked])
    capsys.readouterr()
    assert run(["list", *asked]) == Status.CLEAN
    assert capsys.readouterr().out.rstrip().endswith(title)


@pytest.mark.parametrize("title", [" ", "null", "Burn\u202e", "Burn\x00"])
def test_a_title_that_could_not_be_read_back_is_refused(
    title: str, tmp_path: Path, capsys: Said
) -> None:
    asked = ["new", "wound-burn", "--title", title, "--out", str(tmp_path)]
    assert run(asked) == Status.UNUSABLE
    assert list(tmp_path.iterdir()) == []
    assert "This title cannot stand in a pathway" in capsys.readouterr().err


def test_it_never_writes_over_a_file(tmp_path: Path, capsys: Said) -> None:
    path = tmp_path / "wound-burn.yaml"
    path.write_text("mine")
    assert run(["new", "wound-burn", "--out", str(tmp_path)]) == Status.UNUSABLE
    assert path.read_text() == "mine"
    said = capsys.readouterr()
    assert said.out == ""
    assert "is there already" in said.err


def test_it_never_writes_over_what_a_link_leads_to(tmp_path: Path, capsys: Said) -> None:
    path = tmp_path / "wound-burn.yaml"
    path.symlink_to(tmp_path / "not-there-yet")
    assert run(["new", "wound-burn", "--out", str(tmp_path)]) == Status.UNUSABLE
    assert path.is_symlink()
    assert "is there already" in capsys.readouterr().err


def test_a_name_of_the_library_is_refused(tmp_path: Path, capsys: Said) -> None:
    asked = ["--library", str(LIBRARY), "--out", str(tmp_path)]
    assert run(["new", "shallow-chamber", *asked]) == Status.UNUSABLE
    assert list(tmp_path.iterdir()) == []
    assert "already has a pathway `shallow-chamber`" in capsys.readouterr().err


@pytest.mark.parametrize(
    "name", ["Wound burn", "../escape", "wound_burn", "1st", "true", "a--b", ""]
)
def test_a_name_that_is_none_is_refused(name: str, tmp_path: Path, capsys: Said) -> None:
    assert run(["new", name, "--out", str(tmp_path)]) == Status.UNUSABLE
    assert list(tmp_path.iterdir()) == []
    assert "is not a name in small letters" in capsys.readouterr().err


def test_where_it_cannot_be_written_the_reason_is_told(tmp_path: Path, capsys: Said) -> None:
    (tmp_path / "file").write_text("")
    assert run(["new", "wound-burn", "--out", str(tmp_path / "file")]) == Status.UNUSABLE
    assert "cannot be written" in capsys.readouterr().err
