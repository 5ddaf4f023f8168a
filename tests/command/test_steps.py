"""A sheet of steps by way of the commands: there and back, and every problem by its cell."""

from __future__ import annotations

import csv
from io import StringIO
from pathlib import Path

import pytest
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

Said = pytest.CaptureFixture[str]
LIBRARY = ["--library", str(Path(__file__).resolve().parents[1] / "library")]
SHEET = """\
row,name,text,who,act,finding,value,go to,at most,after that,when,phase,sources
do,fill,Fill the chamber.,surgeon,fill-chamber,,,look,2,seek-help,,hold,common-practice
say,,Filled.,surgeon,call-for-help,,,,,,,,
question,look,Does the wound leak?,,,leak,,,,,,hold,common-practice
answer,none,,,,,,dry,,,,,
answer,leaking,Leaking,,,,slow or fast,fill,,,,,
answer,cannot tell,,,,,,fill,,,,,
end,dry,Wound dry,,,,,,,,,close,common-practice
owed,,Tell the patient.,surgeon,tell-patient,,,,,,the same day,,
end,seek-help,Help sought,,,,,,,,,close,common-practice
owed,,Call the senior surgeon.,surgeon,call-for-help,,,,,,now,,
"""


@pytest.fixture
def sheet(tmp_path: Path) -> Path:
    path = tmp_path / "steps.csv"
    path.write_text(SHEET, encoding="utf-8")
    return path


def made_of(sheet: Path) -> int:
    return run(["new", "dry-wound", "--from", str(sheet), "--out", str(sheet.parent), *LIBRARY])


def test_a_sheet_becomes_a_pathway_that_checks(sheet: Path, capsys: Said) -> None:
    assert made_of(sheet) == Status.CLEAN
    path = sheet.parent / "dry-wound.yaml"
    assert run(["check", str(path), *LIBRARY]) == Status.CLEAN, capsys.readouterr().out
    again = sheet.parent / "again.csv"
    assert run(["steps", str(path), "--out", str(again), *LIBRARY]) == Status.CLEAN
    path.unlink()
    assert made_of(again) == Status.CLEAN
    assert run(["steps", str(path), *LIBRARY]) == Status.CLEAN
    assert capsys.readouterr().out.splitlines()[-1].startswith("owed,,Call the senior surgeon.")


FAULTS = [
    ("answer,none", "anser,none", "row 5, column row: `anser` is no kind of row"),
    ("dry,,,,,\nanswer,leaking", "drry,,,,,\nanswer,leaking", "row 5, column go to: there is no"),
    ("surgeon,fill-chamber", "sturgeon,fill-chamber", "row 2, column who: there is no `sturgeon`"),
    ("surgeon,fill-chamber", "surgeon,fil-chamber", "row 2, column act: there is no"),
    (",,leak,,", ",,leek,,", "row 4, column finding: there is no `leek`"),
    ("slow or fast", "slow or quick", "row 6, column value: there is no `quick`"),
    ("look,2,seek-help", "look,,seek-help", "row 2, column at most: a bound needs both cells"),
    ("look,2,seek-help", "look,two,seek-help", "row 2, column at most: `two` is not"),
    ("question,look", "question,Look here", "row 4, column name: `Look here` is not a name"),
    ("end,seek-help,Help", "end,dry,Help", "row 10, column name: `dry` stands here twice"),
    ("say,,Filled.,surgeon", "say,,Filled.,", "row 3, column who: a row `say` needs it"),
    ("end,dry,Wound dry,,", "end,dry,Wound dry,surgeon,", "row 8, column who: a row `end` has no"),
    ("row,name,text,who", "row,name,words,who", "row 1, column words: `words` is no head"),
    ("row,name,text,who", "row,name,text,text", "row 1, column text: `text` stands over two"),
    (
        "Filled.,surgeon,call-for-help,",
        "Filled.,surgeon,,,,,,,,,,,,,surplus",
        "row 3: `surplus` stands beyond",
    ),
    ("Wound dry", '"Wound dry', "row 8: the row cannot be read"),
    ("hold,common-practice\nsay", ",common-practice\nsay", "row 2, column phase: a step needs it"),
    (
        "surgeon,call-for-help,,,,,,,,\n",
        "surgeon,call-for-help,,,look,,,,,\n",
        "row 3, column go to: a further",
    ),
    ("close,common-practice\nowed,,Tell", "close,handbok\nowed,,Tell", "row 8, column sources"),
]


@pytest.mark.parametrize(("was", "now", "told"), FAULTS)
def test_every_problem_is_told_by_row_and_column(
    was: str, now: str, told: str, sheet: Path, capsys: Said
) -> None:
    assert SHEET.count(was) == 1
    sheet.write_text(SHEET.replace(was, now), encoding="utf-8")
    assert made_of(sheet) == Status.UNUSABLE
    assert f"steps.csv: {told}" in capsys.readouterr().err
    assert [path.name for path in sheet.parent.iterdir()] == ["steps.csv"]


def test_names_that_a_spreadsheet_began_with_a_capital_are_the_same_names(
    sheet: Path, capsys: Said
) -> None:
    assert made_of(sheet) == Status.CLEAN
    made = sheet.parent / "made.yaml"
    (first,) = [path for path in sheet.parent.iterdir() if path.suffix == ".yaml"]
    as_it_was = first.read_text(encoding="utf-8")
    first.rename(made)
    names = {"row", "name", "who", "act", "finding", "value", "go to"}
    rows = list(csv.reader(StringIO(SHEET)))
    for row in rows[1:]:
        row[:] = [
            cell[:1].upper() + cell[1:] if head in names else cell
            for head, cell in zip(rows[0], row, strict=False)
        ]
    stream = StringIO()
    csv.writer(stream).writerows(rows)
    sheet.write_text(stream.getvalue(), encoding="utf-8")
    assert made_of(sheet) == Status.CLEAN, capsys.readouterr().err
    assert first.read_text(encoding="utf-8") == as_it_was


def test_all_problems_are_told_in_one_run(sheet: Path, capsys: Said) -> None:
    text = SHEET
    for was, now, _ in (FAULTS[1], FAULTS[2], FAULTS[5], FAULTS[9]):
        text = text.replace(was, now)
    sheet.write_text(text, encoding="utf-8")
    assert made_of(sheet) == Status.UNUSABLE
    assert capsys.readouterr().err.count("steps.csv: row") >= 4


@pytest.mark.parametrize(
    ("data", "told"),
    [
        (SHEET.encode("utf-16"), "the file is UTF-16"),
        (SHEET.replace("Filled", "Gef\u00fcllt").encode("latin-1"), "is not UTF-8"),
        (SHEET.replace("Filled", "Fil\u202eled").encode(), "row 3: character that turns"),
        (b"<<<<<<< ours\n" + SHEET.encode(), "a merge conflict was left"),
        (b"PK\x03\x04...", "word processor"),
        (b"", "there are no steps"),
        (b"row,name,text\n", "there are no steps"),
    ],
)
def test_what_is_no_sheet_of_steps_is_refused(
    data: bytes, told: str, sheet: Path, capsys: Said
) -> None:
    sheet.write_bytes(data)
    assert made_of(sheet) == Status.UNUSABLE
    assert told in capsys.readouterr().err


@pytest.mark.parametrize("delimiter", [";", "\t"])
def test_semicolons_tabs_and_a_byte_order_mark_are_read(
    delimiter: str, sheet: Path, capsys: Said
) -> None:
    text = "\ufeff" + SHEET.replace(",", delimiter).replace("\n", "\r\n")
    sheet.write_bytes(text.encode())
    assert made_of(sheet) == Status.CLEAN, capsys.readouterr().err


def test_what_a_sheet_cannot_hold_is_told(capsys: Said) -> None:
    assert run(["steps", "shallow-chamber", *LIBRARY]) == Status.CLEAN
    said = capsys.readouterr().err
    assert "Step `hold-and-call`: its cautions." in said
    assert "Step `by-depth-and-iris`: the branch, to which rows lead that need another step" in said
    assert "The table `rules`." in said
