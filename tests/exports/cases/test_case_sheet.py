"""The table of cases as text, CSV and JSON."""

from __future__ import annotations

import csv
import json
from io import StringIO

import pytest
from chamberwise.engine.cases.grouping import apart, grouped
from chamberwise.engine.cases.table import cases
from chamberwise.engine.model.pathway import CaseTable
from chamberwise.exports.cases.content import CaseRow, CaseSheet, case_sheet
from chamberwise.exports.cases.csv import csv_text
from chamberwise.exports.cases.machine import values
from chamberwise.exports.cases.text import text
from hypothesis import given
from hypothesis import strategies as st

from tests.support.build import ask, changed, do, end, finding, library, pathway

HARMFUL = ("=1+1", "+1", "-1", "@SUM(1)", "\tx", "\rx", "\n=1", '=HYPERLINK("x")')

one = library(
    pathway(
        "one",
        ask("look", "wound", dry="done", leaking="stitch"),
        changed(do("stitch", "done", acts="stitch"), plan=(("wound", "Suture"),)),
        end("done"),
        cases=CaseTable(("wound", "depth"), assume=(("lid", "up"),)),
    ),
    findings=[finding("wound", "dry leaking"), finding("depth", "flat deep")],
)
sheet = case_sheet(one, "one", apart(cases(one, "one")))


def plain_sheet(cell: str) -> CaseSheet:
    row = CaseRow((cell,), (("a", ("b",)),), (cell,), cell, (cell,), ("one/step",), cell)
    return CaseSheet(cell, (cell,), (cell,), (row,))


def cells(sheet: CaseSheet) -> list[list[str]]:
    return list(csv.reader(StringIO(csv_text(sheet), newline="")))


@pytest.mark.parametrize("cell", HARMFUL)
def test_no_cell_of_csv_can_be_taken_for_a_formula(cell: str) -> None:
    for row in cells(plain_sheet(cell)):
        assert all(not each.startswith(("=", "+", "-", "@", "\t", "\r", "\n")) for each in row)


@given(st.text(st.characters(codec="utf-8", exclude_characters="\x00"), max_size=20))
def test_csv_reads_back_in_one_line_a_cell_but_for_the_guard(cell: str) -> None:
    heads, row = cells(plain_sheet(cell))
    line = " ".join(cell.splitlines()).strip()
    guarded = f"'{line}" if line.startswith(("=", "+", "-", "@")) else line
    assert heads == [guarded, guarded, "outcome", "remark", "acts"]
    assert row == [guarded] * 5


def test_csv_has_a_line_a_case_under_its_heads() -> None:
    heads, *rows = cells(sheet)
    assert heads == ["wound", "depth", "wound", "outcome", "remark", "acts"]
    assert rows[0] == ["dry", "flat", "", "done", "", ""]
    assert rows[-1] == ["leaking", "deep", "Suture", "done", "", "stitch"]
    assert len(rows) == 4


def test_json_names_findings_and_plan() -> None:
    first, *_, last = values(sheet)
    assert json.loads(json.dumps(values(sheet))) == values(sheet)
    assert first["findings"] == {"wound": "dry", "depth": "flat"}
    assert last == {
        "findings": {"wound": "leaking", "depth": "deep"},
        "plan": {"wound": "Suture"},
        "outcome": "done",
        "acts": ["stitch"],
        "steps": ["one/look", "one/stitch", "one/done"],
        "remark": "",
    }


def test_text_is_no_wider_than_a_terminal_and_says_it_is_no_advice() -> None:
    short = case_sheet(one, "one", grouped(cases(one, "one")))
    said = text(short)
    assert len(short.rows) == 2
    assert "Follow local protocol." in said
    assert "-> wound: Suture" in said
    assert all(len(line) <= 78 for line in said.splitlines())
    assert "any" not in said.replace("advice for a patient", "")
