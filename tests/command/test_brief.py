"""`chamberwise brief`: lists and shelves, good and bad."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from chamberwise.tui.command.finding_files import shipped
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

from tests.command.briefing import HEADS, ROW, SHELF, Seen, listed, refused, shelf_in


def told(words: list[str], capsys: Seen) -> Any:
    run(["brief", *words, "--format", "json"])
    return json.loads(capsys.readouterr().out)


@pytest.fixture
def shelf(tmp_path: Path) -> str:
    return shelf_in(tmp_path)


def test_the_demonstration_is_shown_and_says_that_it_is_invented(capsys: Seen) -> None:
    assert run(["brief"]) == Status.FINDINGS
    seen = capsys.readouterr()
    assert "invented" in seen.out
    assert "never live care" in seen.out
    assert max(map(len, seen.out.splitlines())) <= 78


def test_what_the_demonstration_shows(capsys: Seen) -> None:
    """One case for each thing a brief can find; figures by the formulas tested elsewhere."""
    found = told([], capsys)
    cases = {each["case"]: each for each in found["cases"]}
    assert list(cases) == ["A", "B", "C", "D", "E"]
    assert "Plan and biometry differ" in cases["B"]["to do"][0]
    assert cases["B"]["risk"]["low"] == cases["B"]["risk"]["high"]
    assert cases["C"]["have open"][0] == "capsule dye"
    assert cases["D"]["risk"]["low"] != cases["D"]["risk"]["high"]
    assert all(each["power"] is None for each in cases["E"]["backups"])
    assert any("right eye was measured" in each for each in cases["E"]["to do"])


def test_a_quiet_list_has_nothing_to_do_but_ask_for_risks(
    tmp_path: Path, shelf: str, capsys: Seen
) -> None:
    found = told([listed(tmp_path, HEADS, ROW), "--stock", shelf], capsys)
    assert len(found["to do"]) == 1
    assert "Open of the risk" in found["to do"][0]
    (case,) = found["cases"]
    captured, sulcus = case["backups"]
    assert (captured["power"], captured["missing"]) == ("21.28", False)
    assert sulcus["power"] == "20.32"
    assert [each["power"] for each in sulcus["shelf"]] == ["20.5"]
    assert case["ceiling"].startswith("lidocaine 200 mg")


def test_a_lens_that_runs_short_and_one_that_is_shared(
    tmp_path: Path, shelf: str, capsys: Seen
) -> None:
    path = listed(tmp_path, HEADS, ROW, ROW.replace("A,", "B,", 1))
    to_do = "\n".join(told([path, "--stock", shelf], capsys)["to do"])
    assert "1 on the shelf, 2 needed for cases A, B" in to_do
    assert "three-piece lens 21 D: 1 on the shelf, nearest for cases A, B" in to_do


def test_a_missing_lens_is_to_be_done_before_the_list(
    tmp_path: Path, shelf: str, capsys: Seen
) -> None:
    path = listed(tmp_path, HEADS, ROW.replace("23.5", "21.5"))
    to_do = told([path, "--stock", shelf], capsys)["to do"]
    assert any(each.startswith("Missing for case A: three-piece lens near") for each in to_do)


def test_the_same_list_in_yaml(tmp_path: Path, shelf: str, capsys: Seen) -> None:
    path = listed(
        tmp_path,
        "list: Tuesday",
        "stop word: Freeze",
        "cases:",
        "  - {case: A, eye: right, biometry-eye: right, axial-length: 23.5 mm,",
        "     keratometry: 43.5 D, target: -0.25, planned-model: bag, planned-lens: 21,",
        "     weight: 70 kg}",
        name="list.yaml",
    )
    of_yaml = told([path, "--stock", shelf], capsys)
    of_csv = told([listed(tmp_path, HEADS, ROW), "--stock", shelf], capsys)
    assert of_yaml["cases"] == of_csv["cases"]
    assert of_yaml["people"]["Stop word"] == "Freeze"
    assert of_csv["people"]["Stop word"] == "Hold"


def test_semicolons_and_byte_marks_are_read(tmp_path: Path, shelf: str, capsys: Seen) -> None:
    lines = (HEADS.replace(",", ";"), ROW.replace(",", ";"))
    path = tmp_path / "excel.csv"
    path.write_bytes(b"\xef\xbb\xbf" + "\r\n".join(lines).encode())
    assert told([str(path), "--stock", shelf], capsys)["cases"][0]["backups"][0]["power"]


def test_people_said_on_the_command_line_go_first(tmp_path: Path, shelf: str, capsys: Seen) -> None:
    words = [listed(tmp_path, HEADS, ROW), "--stock", shelf, "--stop-word", "Still"]
    assert told(words, capsys)["people"]["Stop word"] == "Still"


@pytest.mark.parametrize(
    "head", ["name", "Patient", "DOB", "date of birth", "hospital number", "NHS no", "MRN", "phone"]
)
def test_columns_of_identity_are_refused(
    head: str, tmp_path: Path, shelf: str, capsys: Seen
) -> None:
    path = listed(tmp_path, f"{HEADS},{head}", f"{ROW},x")
    found = refused([path, "--stock", shelf], capsys)
    assert "identity-in-a-list" in found
    assert "list.csv:1" in found


def test_identity_in_yaml_is_refused(tmp_path: Path, capsys: Seen) -> None:
    lines = ("list: Tuesday", "cases:", "  - {case: A, patient name: x}")
    found = refused([listed(tmp_path, *lines, name="list.yaml")], capsys)
    assert "identity-in-a-list" in found


@pytest.mark.parametrize("label", ["Smith", "John Smith", "1234567890", "", "01/02/1950"])
def test_a_label_that_may_name_somebody_is_refused(
    label: str, tmp_path: Path, capsys: Seen
) -> None:
    found = refused([listed(tmp_path, HEADS, ROW.replace("A,", f"{label},", 1))], capsys)
    assert "may name somebody" in found


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        ((HEADS + ",axial lenght", ROW + ",23"), "Did you mean `axial-length`?"),
        ((HEADS, ROW + ",7"), "10 cells stand under 9 heads"),
        ((HEADS.removeprefix("case,"), ROW.removeprefix("A,")), "no column `case`"),
        ((HEADS, ROW, ROW), "stands twice"),
        ((HEADS,), "holds no case"),
        ((HEADS, ROW + '"'), "no case"),
        (("",), "no column `case`"),
    ],
)
def test_a_list_that_cannot_be_used(
    lines: tuple[str, ...], said: str, tmp_path: Path, capsys: Seen
) -> None:
    if said == "no case":
        lines, said = (HEADS, 'A,"right'), "Look at the quotes"
    assert said in refused([listed(tmp_path, *lines)], capsys)


def test_no_such_file(tmp_path: Path, capsys: Seen) -> None:
    assert "cannot be opened" in refused([str(tmp_path / "none.csv")], capsys)
    assert "it is a folder" in refused([str(tmp_path)], capsys)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("a-constant: 118.7", "a-constant: 18.7", "`a-constant` is 18.7"),
        ("power: 21,", "power: 21.5 mm,", "does not measure"),
        ("count: 1}]", "count: -1}]", "`count` is -1"),
        ("kind: three-piece", "kind: three-peice", "Did you mean `three-piece`?"),
        ("counted: 2026-11-27", "counted: soon", "a date such as"),
        ("{power: 20.5, count: 1}, ", "{power: 21, count: 1}, ", "stands twice"),
        ("stock: Test unit\n", "", "has no `stock`"),
    ],
)
def test_a_shelf_that_cannot_be_used(
    old: str, new: str, said: str, tmp_path: Path, capsys: Seen
) -> None:
    path = tmp_path / "shelf.yaml"
    path.write_text(SHELF.replace(old, new, 1), encoding="utf-8")
    found = refused([listed(tmp_path, HEADS, ROW), "--stock", str(path)], capsys)
    assert said in found
    assert "shelf.yaml:" in found


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("43.5", "7.7", "keratometry"),
        ("23.5", "1e9", "axial-length"),
        ("right,right", "right,left", "left eye was measured"),
        (",70", ",-70", "weight"),
        (",70", ",", "Weight is not known"),
        (",bag,", ",other,", "no lens of the shelf"),
    ],
)
def test_a_figure_that_is_refused_is_to_do_and_the_rest_is_worked(
    old: str, new: str, said: str, tmp_path: Path, shelf: str, capsys: Seen
) -> None:
    path = listed(tmp_path, HEADS, ROW.replace(old, new, 1), ROW.replace("A,", "B,", 1))
    found = told([path, "--stock", shelf], capsys)
    assert said in "\n".join(found["cases"][0]["to do"])
    assert found["cases"][1]["backups"][0]["power"] == "21.28"


def test_a_decimal_comma_never_slips_into_the_next_column(
    tmp_path: Path, shelf: str, capsys: Seen
) -> None:
    quoted = listed(tmp_path, HEADS, ROW.replace("23.5", '"23,5"'))
    found = told([quoted, "--stock", shelf], capsys)
    assert "has a comma" in "\n".join(found["cases"][0]["to do"])
    bare = listed(tmp_path, HEADS, ROW.replace("23.5", "23,5"))
    assert "10 cells stand under 9 heads" in refused([bare, "--stock", shelf], capsys)


def test_without_a_shelf_no_backup_is_invented(tmp_path: Path, capsys: Seen) -> None:
    found = told([listed(tmp_path, HEADS, ROW)], capsys)
    assert found["cases"][0]["backups"] == []
    assert "No shelf was given: no backup lens is worked." in found["to do"]


def test_the_demonstration_holds_no_name() -> None:
    text = (shipped() / "demonstration" / "list.csv").read_text(encoding="utf-8")
    assert all(len(line.partition(",")[0]) == 1 for line in text.splitlines()[1:])
