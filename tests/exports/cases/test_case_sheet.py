"""The table of cases as text, CSV and JSON."""

from __future__ import annotations

import csv
import json
from io import StringIO
from pathlib import Path

import pytest
from chamberwise.engine.cases.grouping import apart, grouped
from chamberwise.engine.cases.summary import Summary
from chamberwise.engine.cases.table import cases
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.pathway import CaseTable
from chamberwise.exports.cases.content import CaseRow, CaseSheet, case_sheet
from chamberwise.exports.cases.csv import csv_text
from chamberwise.exports.cases.machine import values
from chamberwise.exports.cases.text import text
from chamberwise.exports.cases.told import completeness
from hypothesis import given
from hypothesis import strategies as st

from tests.exports.cases import small
from tests.support.build import ask, changed, do, end, finding, library, pathway
from tests.tui.golden import assert_as_kept

HERE = Path(__file__).resolve().parent
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
    row = CaseRow((cell,), (("a", ("b",)),), (cell,), cell, (cell,), ("one/step",), (cell,))
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
    assert heads == [guarded, guarded, "outcome", "remark", "acts", "hangs on", "not asked"]
    assert row == [*[guarded] * 5, "", ""]


def test_csv_has_a_line_a_case_under_its_heads() -> None:
    heads, *rows = cells(sheet)
    assert heads[:6] == ["wound", "depth", "wound", "outcome", "remark", "acts"]
    assert heads[6:] == ["hangs on", "not asked"]
    assert rows[0] == ["dry", "flat", "", "done", "", "", "", "depth"]
    assert rows[-1] == ["leaking", "deep", "Suture", "done", "", "stitch", "", "depth"]
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
        "not asked": ["depth"],
        "hangs on": [],
        "impossible": [],
    }


def test_text_is_no_wider_than_a_terminal_and_says_it_is_no_advice() -> None:
    short = case_sheet(one, "one", grouped(cases(one, "one")))
    said = text(short)
    assert len(short.rows) == 2
    assert "Follow local protocol." in said
    assert "-> wound: Suture" in said
    assert all(len(line) <= 78 for line in said.splitlines())
    assert "any" not in said.replace("advice for a patient", "")


def test_text_of_a_small_table_to_the_letter() -> None:
    """One row of each kind; CHAMBERWISE_KEEP=1 writes the file anew."""
    assert_as_kept(HERE / "small-table.txt", text(small.sheet()) + "\n")


def test_marks_stand_for_what_a_row_hangs_on_and_not_every_row() -> None:
    shown = small.sheet()
    behind = {note.mark: note.text for note in shown.notes}
    assert list(behind) == ["a", "b", "c"][: len(behind)]
    marks = {mark for row in shown.rows for mark in row.marks}
    assert marks | set(shown.all_hang_on) == set(behind)
    assert not marks & set(shown.all_hang_on)
    assert "Local choice, not set: method (suggested: none)" in behind["a"]
    assert "matters only with trained: trained" in behind["a"]


def test_json_and_csv_say_in_full_what_a_case_hangs_on() -> None:
    whole = small.sheet(short=False)
    rows = {tuple(row["findings"].values()): row for row in values(whole)}
    gone = rows["forward", "gone"]
    assert gone["hangs on"] == [
        {
            "kind": "local choice",
            "finding": "method",
            "value": "none",
            "otherwise": [
                {"value": "fixed", "changes": ["plan"], "once": {"trained": "trained"}},
            ],
        }
    ]
    said = {tuple(row[:2]): dict(zip(cells(whole)[0], row, strict=True)) for row in cells(whole)}
    in_csv = said["forward", "gone"]["hangs on"]
    assert in_csv == "local choice method=none (fixed once trained=trained: plan)"


def test_json_says_where_an_impossible_combination_is_looked_at_again() -> None:
    rows = {tuple(row["findings"].values()): row for row in values(small.sheet(short=False))}
    assert rows["forward", "whole"]["impossible"] == [
        {
            "because": "A whole capsule keeps vitreous back.",
            "stands at": "small/support-left",
            "looked at again": "small/where-now",
            "acts between": ["rinse"],
        }
    ]
    (never,) = rows["back", "gone"]["impossible"]
    assert never["looked at again"] is None
    assert rows["back", "gone"]["remark"].startswith("PROBLEM: declared impossible")


def test_where_walks_may_end_is_told_only_when_asked_for() -> None:
    found = cases(one, "one")
    ends = {case.combination: (Place("one", "done"),) for case in found}
    asked = values(case_sheet(one, "one", apart(found), ends=ends))
    assert [row["may end in"] for row in asked] == [["one/done"]] * len(found)
    assert all("may end in" not in row for row in values(sheet))


@pytest.mark.parametrize(
    ("counts", "said"),
    [
        (
            Summary(6, 0, 2, 1, 0),
            "6 combinations, each leads to one plan with what is assumed; 2 hang on a local "
            "choice; 1 is declared impossible and leads to a second look; 0 open.",
        ),
        (
            Summary(6, 5, 1, 2, 3),
            "6 combinations, 1 leads to one plan with what is assumed; 1 hangs on a local "
            "choice; 2 are declared impossible and lead to a second look; 3 more are declared "
            "impossible and never told in full on the way; 5 open.",
        ),
    ],
)
def test_completeness_is_said_in_one_sentence(counts: Summary, said: str) -> None:
    assert completeness(counts) == said
