"""Where nothing can be written, that is said before anything is read or worked."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from chamberwise.engine.store.place import in_the_way
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

RUPTURE = "posterior-capsule-rupture"
Said = pytest.CaptureFixture[str]


@pytest.fixture(autouse=True)
def _nothing_is_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path / "home"))

    def read(*_args: object, **_more: object) -> None:
        raise AssertionError("read before it was refused")

    for name in ("print", "drill"):
        monkeypatch.setattr(f"chamberwise.tui.command.{name}.asked", read)


@pytest.mark.parametrize(
    ("out", "told"),
    [
        ("x/p", "does not end in .pdf"),
        ("nowhere/p.pdf", "There is no folder nowhere"),
        ("x/p.pdf", "none of our sheets"),
        ("x/p.pdf/q.pdf", "not a folder"),
    ],
)
@pytest.mark.parametrize("words", [["print", RUPTURE, "--what", "pack"], ["brief"]])
def test_a_sheet_that_cannot_go_there(
    words: list[str], out: str, told: str, tmp_path: Path, capsys: Said
) -> None:
    (tmp_path / "x").mkdir()
    (tmp_path / "x" / "p.pdf").write_text("somebody's")
    assert run([*words, "--out", out]) == Status.UNUSABLE
    said = capsys.readouterr().err
    assert told in said
    assert "No list was named" not in said
    assert (tmp_path / "x" / "p.pdf").read_text() == "somebody's"


def test_a_debrief_that_cannot_go_there(capsys: Said) -> None:
    assert run(["drill", RUPTURE, "--debrief", "nowhere/debrief.pdf"]) == Status.UNUSABLE
    assert "There is no folder nowhere" in capsys.readouterr().err


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="may write anywhere")
def test_a_folder_that_nothing_can_be_written_into(tmp_path: Path) -> None:
    closed = tmp_path / "closed"
    closed.mkdir(mode=0o555)
    assert "Nothing can be written into" in in_the_way(closed / "sheet.pdf")


def test_a_folder_named_so_is_made_for_a_sheet(tmp_path: Path) -> None:
    """The example in the help of `print`."""
    from chamberwise.exports.printing.files import destination, write
    from chamberwise.exports.printing.printing import Form

    path = destination(Path("sheets/"), "pack", Form.PDF, is_folder=True)
    write({path: b"%PDF"})
    assert (tmp_path / "sheets" / "pack.pdf").read_bytes() == b"%PDF"


def test_what_may_be_written_is_not_in_the_way(tmp_path: Path) -> None:
    assert in_the_way(tmp_path / "sheet.pdf") == ""
    assert "is a folder" in in_the_way(tmp_path)


@pytest.mark.parametrize(
    "words",
    [
        ["check", "LONG.yaml"],
        ["walk", "LONG"],
        ["list", "--library", "LONG"],
        ["compare", "LONG.yaml", "LONG.yaml"],
        ["steps", RUPTURE, "--out", "LONG.csv"],
        ["brief", "--out", "LONG.pdf"],
        ["new", "wound-burn", "--out", "LONG"],
    ],
)
def test_a_name_longer_than_the_system_takes(words: list[str], capsys: Said) -> None:
    assert run([each.replace("LONG", "x" * 300) for each in words]) == Status.UNUSABLE
    assert "xxx" in capsys.readouterr().err
