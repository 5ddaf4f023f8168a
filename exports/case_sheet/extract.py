"""From the cases of a pathway to a table for paper."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from chamberwise.engine.cases.case import Case
from chamberwise.engine.cases.grouping import grouped
from chamberwise.engine.cases.summary import summary
from chamberwise.engine.cases.table import whole_cases
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import CaseTable
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import Finding
from chamberwise.exports.case_sheet.content import (
    NOTHING,
    CaseTablePaper,
    Head,
    Impossible,
    Row,
    Section,
)
from chamberwise.exports.cases.content import CaseRow, CaseSheet, case_sheet
from chamberwise.exports.cases.told import completeness
from chamberwise.exports.language.joining import alternatives

KEPT = 2
"""Findings that stay columns; those before them head the sections."""
OUTCOME = N_("outcome")


@dataclass(frozen=True, slots=True)
class _Shape:
    """How many findings head a section, and which plan columns do too."""

    lifted: int
    plans: tuple[int, ...]


def case_table(library: Library, name: PathwayId) -> CaseTablePaper | None:
    """Return the table; `None` where the pathway has none."""
    table = library.pathways[name].cases
    if table is None:
        return None
    found = whole_cases(library, name)
    groups = [each for each in grouped(found) if _is_shown(each.case)]
    sheet = case_sheet(
        library, name, groups, dict(table.assume), completeness=completeness(summary(found))
    )
    shape = _shape(sheet)
    return CaseTablePaper(
        sheet.title,
        (*sheet.findings[shape.lifted :], *_columns(sheet, shape), _(OUTCOME)),
        tuple(_sections(sheet, shape)),
        sheet.assumed,
        tuple(_impossible(library, name, table, found)),
        tuple((note.mark, note.text) for note in sheet.notes),
        sheet.all_hang_on,
        sheet.completeness,
    )


def _is_shown(case: Case) -> bool:
    return not case.improbable or bool(case.problem)


def _shape(sheet: CaseSheet) -> _Shape:
    lifted = max(0, len(sheet.findings) - KEPT)
    told: dict[tuple[str, ...], list[CaseRow]] = _by_heads(sheet, lifted)
    plans = tuple(
        place
        for place in range(len(sheet.columns))
        if lifted and all(len({row.plan[place] for row in rows}) == 1 for rows in told.values())
    )
    return _Shape(lifted, plans)


def _by_heads(sheet: CaseSheet, lifted: int) -> dict[tuple[str, ...], list[CaseRow]]:
    found: dict[tuple[str, ...], list[CaseRow]] = {}
    for row in sheet.rows:
        found.setdefault(row.findings[:lifted], []).append(row)
    return found


def _columns(sheet: CaseSheet, shape: _Shape) -> tuple[str, ...]:
    kept = (place for place in range(len(sheet.columns)) if place not in shape.plans)
    return tuple(_("plan: {columns}").format(columns=sheet.columns[place]) for place in kept)


def _sections(sheet: CaseSheet, shape: _Shape) -> list[Section]:
    found: dict[tuple[Row, ...], list[Head]] = {}
    for heads, rows in _by_heads(sheet, shape.lifted).items():
        findings = tuple(zip(sheet.findings, heads, strict=False))
        plans = tuple(
            (sheet.columns[place], rows[0].plan[place])
            for place in shape.plans
            if rows[0].plan[place]
        )
        all_rows = tuple(mark for mark in rows[0].marks if shape.lifted and _in_all(mark, rows))
        told = tuple(_row(row, shape, all_rows) for row in rows)
        found.setdefault(told, []).append(Head(findings, plans, all_rows))
    return [Section(tuple(heads), rows) for rows, heads in found.items()]


def _in_all(mark: str, rows: Sequence[CaseRow]) -> bool:
    return all(mark in row.marks for row in rows)


def _row(row: CaseRow, shape: _Shape, told_above: tuple[str, ...]) -> Row:
    plans = (said or NOTHING for place, said in enumerate(row.plan) if place not in shape.plans)
    cells = (*row.findings[shape.lifted :], *plans, row.outcome or NOTHING)
    marks = tuple(each for each in row.marks if each not in told_above)
    return Row(cells, marks, " ".join(row.remarks))


def _impossible(
    library: Library, name: PathwayId, table: CaseTable, found: Sequence[Case]
) -> list[Impossible]:
    told = []
    for each in table.impossible:
        doubts = [doubt for case in found for doubt in case.doubts if doubt.because == each.because]
        again = sum(doubt.looked_at is not None for doubt in doubts)
        never = sum(doubt.stands_at is None for doubt in doubts)
        after = _("looked at again in {again}; never told in full on the way in {never}").format(
            again=again, never=never
        )
        words = "; ".join(_term(library.finding(name, term), vs) for term, vs in each.when.terms)
        told.append(Impossible(words, each.because, len(doubts), after))
    return told


def _term(finding: Finding, values: Sequence[str]) -> str:
    """Return e.g. `Vitreous: None, or Only at the tear`."""
    labels = alternatives(each.label for each in finding.values if each.id in values)
    return f"{finding.title}: {labels}"
