"""The case table on paper: every ordinary case is told once, as the engine finds it."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from chamberwise.engine.cases.case import Case
from chamberwise.engine.cases.table import cases
from chamberwise.engine.model.step import Outcome
from chamberwise.exports.case_sheet.content import NOTHING, CaseTablePaper
from chamberwise.exports.case_sheet.extract import case_table
from chamberwise.exports.case_sheet.make import make
from chamberwise.exports.case_sheet.text import text
from chamberwise.exports.paper.sheet import Page

from tests.exports.cases.small import SMALL
from tests.exports.flow.small import small
from tests.exports.flow.stage import order, printed, shipped, words
from tests.tui.golden import assert_as_kept

HERE = Path(__file__).resolve().parent
TABLES = [name for name, own in shipped().pathways.items() if own.cases]


@cache
def found_cases(name: str) -> tuple[Case, ...]:
    return tuple(cases(shipped(), name))


@cache
def table_of(name: str) -> CaseTablePaper:
    table = case_table(shipped(), name)
    assert table is not None
    return table


@cache
def pages_of(name: str) -> tuple[Page, ...]:
    return make(order(shipped(), name)).pages


def told(table: CaseTablePaper) -> Iterator[tuple[dict[str, str], dict[str, str]]]:
    """Yield findings and plans of each row under each of its heads."""
    for section in table.sections:
        for head in section.heads:
            for row in section.rows:
                cells = dict(zip(table.columns, row.cells, strict=True))
                plans = dict(head.plans)
                plans |= {
                    name.removeprefix("plan: "): said
                    for name, said in cells.items()
                    if (name.startswith("plan: ") or name == "outcome") and said != NOTHING
                }
                yield {**dict(head.findings), **cells}, plans


@cache
def told_as(name: str, finding: str, value: str) -> tuple[str, str]:
    known = shipped().finding(name, finding)
    return known.title, next(each.label for each in known.values if each.id == value)


def matches(name: str, case: Case, row: dict[str, str]) -> bool:
    for finding, value in case.combination:
        title, label = told_as(name, finding, value)
        said = row[title]
        if said != "any" and label not in said.split(", or "):
            return False
    return True


@pytest.mark.parametrize("name", TABLES)
def test_every_ordinary_case_is_told_once_with_its_plan(name: str) -> None:
    rows = [*told(table_of(name))]
    ordinary = [each for each in found_cases(name) if not each.improbable]
    assert ordinary
    for case in ordinary:
        (plan,) = [plans for found, plans in rows if matches(name, case, found)]
        assert case.outcome is not None
        end = shipped().step(case.outcome)
        assert isinstance(end, Outcome)
        said = {column: ", then ".join(each) for column, each in case.plan.items()}
        assert plan == {**said, "outcome": end.title}


@pytest.mark.parametrize("name", TABLES)
def test_impossible_cases_are_in_no_row_but_named_with_their_reason(name: str) -> None:
    table = table_of(name)
    declared = shipped().pathways[name].cases
    assert declared is not None
    rows = [*told(table)]
    for case in found_cases(name):
        if case.improbable:
            assert not any(matches(name, case, found) for found, _ in rows)
    assert [each.because for each in table.impossible] == [
        each.because for each in declared.impossible
    ]
    said = printed(pages_of(name))
    assert all(each.because in said for each in declared.impossible)


@pytest.mark.parametrize("name", TABLES)
def test_every_page_of_the_table_repeats_its_heads(name: str) -> None:
    table = table_of(name)
    rows = 0
    for page in pages_of(name):
        said = words(page)
        if any("hangs on" in each for each in said) and "Hangs on" in said:
            rows += 1
            assert all(f"{each[:1].upper()}{each[1:]}" in said for each in table.columns)
    assert rows >= 2


def test_text_of_a_small_table_to_the_letter() -> None:
    table = case_table(SMALL, "small")
    assert table is not None
    assert_as_kept(HERE / "small.txt", text(table))


def test_a_small_table_prints_whole() -> None:
    table = case_table(small(), "small")
    assert table is not None
    said = printed(make(order(small(), "small")).pages)
    for section in table.sections:
        for row in section.rows:
            assert all(cell in said for cell in row.cells)
