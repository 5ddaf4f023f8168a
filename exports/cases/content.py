"""The table of cases as plain rows; the only file here that knows the engine."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from chamberwise.engine.cases.case import Case
from chamberwise.engine.cases.table import ANY
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import CANNOT_TELL, Outcome, PathwayId


@dataclass(frozen=True, slots=True)
class CaseRow:
    """One row: labels of the findings, the plan by column, the outcome, and remarks."""

    findings: tuple[str, ...]
    names: tuple[tuple[str, str], ...]
    plan: tuple[str, ...]
    outcome: str
    acts: tuple[str, ...]
    steps: tuple[str, ...]
    remark: str


@dataclass(frozen=True, slots=True)
class CaseSheet:
    """The whole table: its title, the heads of findings and of plan columns, and the rows."""

    title: str
    findings: tuple[str, ...]
    columns: tuple[str, ...]
    rows: tuple[CaseRow, ...]


def case_sheet(library: Library, pathway: PathwayId, cases: Sequence[Case]) -> CaseSheet:
    """Return the table of some cases of a pathway, labelled as the pathway labels them."""
    columns = tuple(dict.fromkeys(column for case in cases for column in case.plan))
    heads = tuple(
        library.finding(pathway, name).title for name, _ in (cases[0].combination if cases else ())
    )
    rows = tuple(_row(library, pathway, case, columns) for case in cases)
    return CaseSheet(library.pathways[pathway].title, heads, columns, rows)


def _row(library: Library, pathway: PathwayId, case: Case, columns: tuple[str, ...]) -> CaseRow:
    outcome = ""
    if case.outcome:
        step = library.step(case.outcome)
        outcome = step.title if isinstance(step, Outcome) else ""
    return CaseRow(
        tuple(_label(library, pathway, name, value) for name, value in case.combination),
        case.combination,
        tuple(", then ".join(case.plan.get(column, ())) for column in columns),
        outcome,
        case.acts,
        tuple(f"{place.pathway}/{place.step}" for place in case.steps),
        _remark(case),
    )


def _label(library: Library, pathway: PathwayId, name: str, value: str) -> str:
    if value in (ANY, CANNOT_TELL):
        return value
    found = library.finding(pathway, name).value(value)
    return found.label if found else value


def _remark(case: Case) -> str:
    if case.problem:
        return f"PROBLEM: {case.problem}"
    if not case.improbable:
        return ""
    looked = "looked at again" if case.looked_again else "NOT looked at again"
    return f"improbable, {looked}: {case.improbable}"
