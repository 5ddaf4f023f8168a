"""`chamberwise stamp` as typed: current, superseded or unknown, and what hangs where."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest
from chamberwise.engine.store.register_file import read
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

from tests.exports.printing.rooms import use_test_rooms

Said = pytest.CaptureFixture[str]
LIBRARY = Path(__file__).resolve().parents[1] / "library"
NAME = "shallow-chamber"
PLACE = "Theatre 2, circulating side"


@pytest.fixture(autouse=True)
def library(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return a copy of the library, and keep everything in a folder of the test."""
    use_test_rooms(monkeypatch)
    monkeypatch.setenv("CHAMBERWISE_HOME", str(tmp_path / "home"))
    monkeypatch.chdir(tmp_path)
    return shutil.copytree(LIBRARY, tmp_path / "library")


def typed(library: Path, *words: str) -> int:
    return run(["stamp", "--library", str(library), "--on", "2026-11-25", *words])


def values(library: Path, capsys: Said, *words: str) -> dict[str, object]:
    capsys.readouterr()
    typed(library, *words, "--format", "json")
    found: dict[str, object] = json.loads(capsys.readouterr().out)
    return found


def printed(library: Path, *words: str, name: str = NAME) -> str:
    """Print a sheet and return its stamp."""
    asked = ["print", "--library", str(library), "--date", "2026-11-20", name, *words]
    assert run(asked) == Status.CLEAN
    return read(Path("home/register.json")).copies[-1].code


def edit(library: Path, old: str, new: str, name: str = NAME) -> None:
    path = library / f"{name}.yaml"
    text = path.read_text()
    assert old in text
    path.write_text(text.replace(old, new))


def test_a_sheet_just_printed_is_current(library: Path, capsys: Said) -> None:
    code = printed(library, "--hangs", PLACE)
    capsys.readouterr()
    assert typed(library, code.lower().replace("-", "")) == Status.CLEAN
    said = " ".join(capsys.readouterr().out.split())
    assert said.startswith("CURRENT: ")
    assert code in said
    assert f"A3 portrait, printed 20 Nov 2026, hangs: {PLACE}" in said


def test_it_is_current_without_any_register(library: Path, capsys: Said) -> None:
    code = printed(library)
    Path("home/register.json").unlink()
    assert typed(library, code) == Status.CLEAN
    assert values(library, capsys, code)["copies"] == []


def test_a_code_may_be_typed_in_pieces(library: Path) -> None:
    code = printed(library)
    assert typed(library, *code.split("-")) == Status.CLEAN


def test_a_changed_pathway_supersedes_its_sheets(library: Path, capsys: Said) -> None:
    code = printed(library)
    edit(library, "edition: ", "edition: 9")
    question = next(
        line for line in (library / f"{NAME}.yaml").read_text().splitlines() if "question: " in line
    )
    edit(library, question, question.replace("question: ", "question: Now, "))
    capsys.readouterr()
    assert typed(library, code) == Status.FINDINGS
    said = " ".join(capsys.readouterr().out.split())
    assert said.startswith("SUPERSEDED: ")
    assert "Superseded by edition 9" in said
    assert "Changed since: - " in said
    assert "is now worded “Now, " in said
    assert f"chamberwise print {NAME} --what wall-chart" in said
    found = values(library, capsys, code)
    assert found["worth"] == "superseded"
    assert len(found["changed"]) <= 5  # type: ignore[arg-type]


def test_since_when_is_told_once_the_new_content_was_printed(library: Path, capsys: Said) -> None:
    code = printed(library)
    edit(library, "title: ", "title: Very ")
    assert printed(library) != code
    said = values(library, capsys, code)["said"]
    assert "The new content was first printed here on 20 Nov 2026." in said  # type: ignore[operator]
    assert any("still called the same" in each for each in said)  # type: ignore[attr-defined]


def test_a_pathway_that_is_gone(library: Path, capsys: Said) -> None:
    code = printed(library, name="pressing-lids")
    (library / "pressing-lids.yaml").unlink()
    capsys.readouterr()
    assert typed(library, code) == Status.FINDINGS
    assert "Take the sheet down." in " ".join(capsys.readouterr().out.split())


@pytest.mark.parametrize(
    ("typed_code", "told"),
    [
        ("0000-016J-D", "It is well formed"),
        ("0000-016J-E", "probably a typing error"),
        ("016J", "this has 4"),
    ],
)
def test_an_unknown_stamp_says_why(typed_code: str, told: str, library: Path, capsys: Said) -> None:
    assert typed(library, typed_code) == Status.FINDINGS
    said = " ".join(capsys.readouterr().out.split())
    assert said.startswith(f"UNKNOWN: {typed_code}")
    assert told in said
    assert typed(library, typed_code, "--format", "json") == Status.FINDINGS


def test_a_typing_error_is_told_with_the_stamp_it_is_like(library: Path, capsys: Said) -> None:
    code = printed(library)
    wrong = code[:-1] + ("0" if code[-1] != "0" else "1")
    capsys.readouterr()
    assert typed(library, wrong) == Status.FINDINGS
    assert f"Did you mean {code}?" in capsys.readouterr().out


def test_places_are_kept_listed_and_taken_down(library: Path, capsys: Said) -> None:
    code = printed(library)
    for place in (PLACE, PLACE, "Theatre 3"):
        assert typed(library, code, "--hangs", place) == Status.CLEAN
    said = capsys.readouterr().err
    assert "is known to hang there already" in said
    typed(library)
    listed = capsys.readouterr().out
    assert [line.startswith("current ") for line in listed.splitlines()] == [False, True, True]
    assert PLACE in listed
    assert typed(library, code, "--hangs", "") == Status.CLEAN
    assert "Taken off the register: 2 copies." in capsys.readouterr().out
    assert read(Path("home/register.json")).copies == ()


def test_a_sheet_that_was_never_registered_can_be_hung(library: Path, capsys: Said) -> None:
    code = printed(library)
    Path("home/register.json").unlink()
    assert typed(library, code, "--hangs", PLACE) == Status.CLEAN
    edit(library, "title: ", "title: Very ")
    assert values(library, capsys, code)["worth"] == "superseded"


def test_an_unknown_stamp_hangs_nowhere(library: Path) -> None:
    assert typed(library, "0000-016J-D", "--hangs", PLACE) == Status.FINDINGS
    assert not Path("home").exists()


def test_the_list_tells_what_to_take_down_first(library: Path, capsys: Said) -> None:
    printed(library, name="pressing-lids")
    old = printed(library)
    capsys.readouterr()
    assert typed(library) == Status.CLEAN
    capsys.readouterr()
    edit(library, "edition: ", "edition: 9", "shallow-chamber")
    assert typed(library) == Status.FINDINGS
    said = capsys.readouterr()
    assert said.out.splitlines()[1].startswith(f"SUPERSEDED  {old}")
    assert "To be taken down: " in said.err


def test_an_empty_register_says_how_it_fills(library: Path, capsys: Said) -> None:
    assert typed(library) == Status.CLEAN
    said = capsys.readouterr()
    assert said.out == ""
    assert "No copy is registered yet" in said.err
    assert typed(library, "--format", "json") == Status.CLEAN
    assert json.loads(capsys.readouterr().out) == []


def test_a_file_outside_the_library_is_found_again(library: Path, capsys: Said) -> None:
    path = Path("local.yaml")
    shutil.copy(library / f"{NAME}.yaml", path)
    path.write_text(path.read_text().replace("title: ", "title: Our ", 1))
    code = printed(library, name=str(path))
    assert typed(library, code) == Status.CLEAN
    path.write_text(path.read_text().replace("title: Our", "title: Your", 1))
    assert typed(library, code) == Status.FINDINGS
    path.unlink()
    capsys.readouterr()
    assert typed(library, code) == Status.FINDINGS
    assert "which is gone" in " ".join(capsys.readouterr().out.split())


@pytest.mark.parametrize("words", [("--hangs", PLACE), ("0000-016J-D", "--format", "poem")])
def test_what_cannot_be_used(words: tuple[str, ...], library: Path, capsys: Said) -> None:
    try:
        status = typed(library, *words)
    except SystemExit as end:
        status = int(end.code or 0)
    assert status == Status.UNUSABLE
    assert capsys.readouterr().out == ""


def test_a_broken_register_is_told_and_left_alone(library: Path, capsys: Said) -> None:
    Path("home").mkdir()
    Path("home/register.json").write_text("[]")
    for words in ((), ("0000-016J-D",)):
        assert typed(library, *words) == Status.UNUSABLE
        assert "left as it is" in capsys.readouterr().err
    assert Path("home/register.json").read_text() == "[]"


def test_an_expired_sheet_is_current_and_says_so(library: Path, capsys: Said) -> None:
    code = printed(library)
    capsys.readouterr()
    assert run(["stamp", "--library", str(library), "--on", "2099-01-01", code]) == Status.CLEAN
    assert "EXPIRED" in capsys.readouterr().out
