"""`chamberwise print` as typed: names, what is never written over, and what is registered."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pypdf
import pytest
from chamberwise.engine.store.register_file import read
from chamberwise.exports.printing import kinds
from chamberwise.exports.printing.order import Kind
from chamberwise.tui.command.main import run
from chamberwise.tui.command.print import WHAT
from chamberwise.tui.command.status import Status
from chamberwise.tui.wanted import PACK
from pypdf.generic import Destination

from tests.exports.printing.room import WAYS_OUT
from tests.exports.printing.rooms import use_test_rooms

Said = pytest.CaptureFixture[str]
LIBRARY = Path(__file__).resolve().parents[1] / "library"
NOWHERE = kinds.Room("chamberwise.exports.nowhere", "nothing")
NAME = "shallow-chamber"
ON = "2026-11-25"
NEVER_ENDS = """vocabulary: A rule that nothing keeps
rules:
  nothing-ends:
    title: Nothing ever ends
    absence: {never: {outcome: any}}
    harm: The eye stays open.
    severity: minor
    instead: Close the eye.
    sources: [common-practice]
"""


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Print with the room of the tests, into a folder of its own."""
    use_test_rooms(monkeypatch)
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path / "home"))
    folder = tmp_path / "here"
    folder.mkdir()
    monkeypatch.chdir(folder)
    return folder


def typed(*words: str, name: str = NAME) -> int:
    try:
        return run(["print", "--library", str(LIBRARY), "--date", ON, name, *words])
    except SystemExit as end:
        return int(end.code or 0)


def registered(tmp_path: Path) -> list[tuple[str, str, str]]:
    found = read(tmp_path / "home" / "register.json")
    return [(copy.sheet, copy.paper, copy.hangs) for copy in found.copies]


def files(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_the_kinds_that_can_be_typed_are_those_there_are() -> None:
    assert (*(kind.value for kind in Kind), PACK) == WHAT


def test_a_wall_chart_is_written_here_and_registered(
    here: Path, tmp_path: Path, capsys: Said
) -> None:
    assert typed("--hangs", " Theatre 2,  left ") == Status.CLEAN
    said = capsys.readouterr()
    assert said.out == f"{NAME}-wall-chart-A3.pdf\n"
    assert "Laminate with a matt film." in said.err
    assert "Follow local protocol." in said.err
    (code,) = [copy.code for copy in read(tmp_path / "home" / "register.json").copies]
    assert f"Stamp of the wall chart: {code}" in said.err
    text = "".join(page.extract_text() for page in pypdf.PdfReader(here / said.out.strip()).pages)
    assert code in text
    assert "TEMPLATE: ADAPT LOCALLY" in text
    assert registered(tmp_path) == [("wall-chart", "A3 portrait", "Theatre 2, left")]


def test_the_same_day_gives_the_same_bytes(here: Path) -> None:
    typed("--out", "one.pdf")
    typed("--out", "two.pdf")
    assert (here / "one.pdf").read_bytes() == (here / "two.pdf").read_bytes()


@pytest.mark.parametrize("form", ["pdf", "svg", "png"])
def test_our_own_file_is_written_over_and_a_stranger_is_not(
    form: str, here: Path, capsys: Said
) -> None:
    out = f"chart.{form}"
    assert typed("--format", form, "--out", out) == Status.CLEAN
    assert typed("--format", form, "--out", out, "--paper", "A2") == Status.CLEAN
    (here / out).write_bytes(b"a stranger's")
    assert typed("--out", out) == Status.UNUSABLE
    assert "none of our sheets" in capsys.readouterr().err
    assert (here / out).read_bytes() == b"a stranger's"
    assert typed("--out", out, "--overwrite") == Status.CLEAN
    assert (here / out).read_bytes() != b"a stranger's"


def test_no_line_is_kept_where_none_is_wanted(tmp_path: Path) -> None:
    assert typed("--no-register") == Status.CLEAN
    assert not (tmp_path / "home").exists()


def test_a_broken_register_stops_no_print_and_is_left_alone(
    here: Path, tmp_path: Path, capsys: Said
) -> None:
    (tmp_path / "home").mkdir()
    (tmp_path / "home" / "register.json").write_text("{")
    assert typed() == Status.CLEAN
    assert "Printed, but not registered." in capsys.readouterr().err
    assert (tmp_path / "home" / "register.json").read_text() == "{"
    assert files(here) == [f"{NAME}-wall-chart-A3.pdf"]


def test_what_cannot_be_read_from_there_says_each_way_out(
    here: Path, tmp_path: Path, capsys: Said
) -> None:
    assert typed("--what", "pack", "--distance", "9") == Status.FINDINGS
    said = capsys.readouterr()
    assert said.out == ""
    assert all(f"- {way}" in said.err for way in WAYS_OUT)
    assert all(f"The {kind.words} cannot be read so" in said.err for kind in Kind)
    assert files(here) == []
    assert not (tmp_path / "home").exists()


def test_a_pack_is_one_file_with_a_bookmark_for_each_kind(
    here: Path, tmp_path: Path, capsys: Said
) -> None:
    assert typed("--what", "pack", "--paper", "A2", "--landscape") == Status.CLEAN
    reader = pypdf.PdfReader(here / f"{NAME}-pack-A2.pdf")
    marked = [str(each["/Title"]) for each in reader.outline if isinstance(each, Destination)]
    assert [title.rpartition(": ")[2] for title in marked] == [kind.words for kind in Kind]
    assert {sheet: paper for sheet, paper, _ in registered(tmp_path)} == {
        kind.value: "A2 landscape" if kind is Kind.WALL_CHART else str(kinds.usual(kind))
        for kind in Kind
    }


def test_a_pack_of_drawings_is_a_file_for_each_kind(here: Path) -> None:
    assert typed("--what", "pack", "--format", "svg", "--out", ".") == Status.CLEAN
    assert len(files(here)) == len(Kind)
    assert all("Made by Chamberwise" in (here / name).read_text() for name in files(here))


def test_a_pathway_without_cases_has_no_case_table(here: Path, capsys: Said) -> None:
    assert typed("--what", "case-table", name="pressing-lids") == Status.UNUSABLE
    assert "has no table of cases" in capsys.readouterr().err
    assert typed("--what", "pack", name="pressing-lids") == Status.CLEAN
    assert "Stamp of the case table" not in capsys.readouterr().err


def test_an_approved_sheet_with_errors_is_not_printed_and_a_draft_is(
    here: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    monkeypatch.undo()
    monkeypatch.chdir(here)
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path / "home"))
    use_test_rooms(monkeypatch, audited=True)
    assert typed(name="pressing-lids") == Status.FINDINGS
    said = capsys.readouterr()
    assert said.out == ""
    assert "it is approved, and the audit finds errors" in said.err
    assert "LEG-01: " in said.err
    assert files(here) == []
    assert not (tmp_path / "home").exists()
    assert typed() == Status.CLEAN


def test_text_is_shown_or_written_and_never_registered(
    here: Path, tmp_path: Path, capsys: Said
) -> None:
    assert typed("--what", "script", "--format", "text") == Status.CLEAN
    shown = capsys.readouterr().out
    assert "Made by Chamberwise: script, stamp " in shown
    assert typed("--what", "script", "--out", "script.txt") == Status.CLEAN
    assert (here / "script.txt").read_text() == shown
    assert not (tmp_path / "home").exists()


def test_tiles_are_a_page_each_and_one_to_join_them(here: Path) -> None:
    assert typed("--tiles") == Status.CLEAN
    assert len(pypdf.PdfReader(here / f"{NAME}-wall-chart-A3-tiles.pdf").pages) == 5


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--distance", "near"), "`near` is no distance"),
        (("--distance", "-1"), "is no distance"),
        (("--distance", "nan"), "is no distance"),
        (("--paper", "A5"), "A5"),
        (("--what", "poster"), "poster"),
        (("--portrait", "--landscape"), "not allowed"),
        (("--what", "script", "--tiles"), "cuts a wall chart only"),
        (("--out", "nowhere/x.pdf"), "There is no folder nowhere"),
        (("--out", "nowhere/new/"), "There is no folder nowhere"),
        (("--out", "x.pdf", "--format", "svg"), "does not end in .svg"),
        (("--out", "x.doc"), "does not end in .pdf"),
        (("--hangs", "x" * 121), "at most 120"),
        (("--hangs", "a\x07b"), "signs that cannot be seen"),
        (("--unit", "\u05e9\u05dc\u05d5\u05dd"), "from right to left"),
        (("--unit", "\u6f22"), "has no such letter"),
    ],
)
def test_what_cannot_be_printed_says_why_and_writes_nothing(
    words: tuple[str, ...], told: str, here: Path, tmp_path: Path, capsys: Said
) -> None:
    assert typed(*words) == Status.UNUSABLE
    said = capsys.readouterr()
    assert said.out == ""
    assert told in said.err
    assert "Traceback" not in said.err
    assert files(here) == []
    assert not (tmp_path / "home").exists()


@pytest.mark.parametrize("form", ["pdf", "text"])
def test_a_kind_that_nothing_makes_yet_says_so(
    form: str, here: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    monkeypatch.setattr(kinds, "ROOMS", dict.fromkeys(Kind, NOWHERE))
    assert typed("--format", form) == Status.UNUSABLE
    assert "makes no wall chart in that form yet" in capsys.readouterr().err


def test_a_pathway_that_cannot_be_walked_is_not_printed(tmp_path: Path, capsys: Said) -> None:
    path = tmp_path / f"{NAME}.yaml"
    text = (LIBRARY / f"{NAME}.yaml").read_text()
    path.write_text(text.replace("start: ", "start: no-such-"))
    assert typed(name=str(path)) == Status.UNUSABLE
    assert "cannot be printed" in capsys.readouterr().err


def test_a_pathway_with_an_error_is_not_printed(here: Path, tmp_path: Path, capsys: Said) -> None:
    path = tmp_path / f"{NAME}.yaml"
    lines = (LIBRARY / f"{NAME}.yaml").read_text().splitlines(keepends=True)
    path.write_text("".join(line for line in lines if "cannot tell:" not in line))
    assert typed(name=str(path)) == Status.UNUSABLE
    said = capsys.readouterr().err
    assert "[answers-do-not-cover]" in said
    assert "cannot be printed until this is put right" in said
    assert files(here) == []


def test_an_approved_pathway_that_breaks_a_rule_is_not_printed_and_a_draft_is(
    here: Path, tmp_path: Path, capsys: Said
) -> None:
    """A local edit that breaks a rule cannot go out as approved."""
    library = Path(shutil.copytree(LIBRARY, tmp_path / "library"))
    (library / "vocabulary" / "broken.yaml").write_text(NEVER_ENDS)
    ordered = ["print", "--library", str(library), "--date", ON]
    assert run([*ordered, "pressing-lids"]) == Status.FINDINGS
    said = capsys.readouterr().err
    assert "It breaks safety rules and cannot go out as approved" in said
    assert "Nothing ever ends" in said
    assert files(here) == []
    assert run([*ordered, NAME]) == Status.CLEAN


def test_a_full_disk_leaves_nothing_behind(
    here: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Said
) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    assert typed() == Status.UNUSABLE
    assert "No space left on device" in capsys.readouterr().err
    assert files(here) == []
    assert not (tmp_path / "home").exists()


def test_a_file_from_outside_the_library_is_remembered(tmp_path: Path) -> None:
    path = shutil.copy(LIBRARY / f"{NAME}.yaml", tmp_path / f"{NAME}.yaml")
    assert typed(name=str(path)) == Status.CLEAN
    (copy,) = read(tmp_path / "home" / "register.json").copies
    assert copy.source == str(path)
