"""The table of cases as plain rows; the only file here that knows the engine."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from chamberwise.engine.cases.case import Case
from chamberwise.engine.cases.grouping import CaseGroup
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Outcome, PathwayId
from chamberwise.engine.model.words import FindingId, ValueId

ANY = "any"


@dataclass(frozen=True, slots=True)
class CaseRow:
    """One row: labels of the findings, the plan by column, the outcome, and remarks."""

    findings: tuple[str, ...]
    names: tuple[tuple[str, tuple[str, ...]], ...]
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
    assumed: tuple[tuple[str, str], ...] = ()
    """What is taken for granted: findings with the label of the value assumed."""


def case_sheet(
    library: Library,
    pathway: PathwayId,
    groups: Sequence[CaseGroup],
    assumed: Mapping[FindingId, ValueId] | None = None,
) -> CaseSheet:
    """Return the table of some cases of a pathway, labelled as the pathway labels them."""
    plans = sorted((group.case.plan for group in groups), key=len, reverse=True)
    columns = tuple(dict.fromkeys(column for plan in plans for column in plan))
    findings = groups[0].findings if groups else ()
    heads = tuple(library.finding(pathway, name).title for name in findings)
    rows = tuple(_row(library, pathway, group, columns) for group in groups)
    taken = tuple(
        (library.finding(pathway, name).title, _label(library, pathway, name, (value,)))
        for name, value in (assumed or {}).items()
    )
    return CaseSheet(library.pathways[pathway].title, heads, columns, rows, taken)


def _row(
    library: Library, pathway: PathwayId, group: CaseGroup, columns: tuple[str, ...]
) -> CaseRow:
    case, outcome = group.case, ""
    names = tuple(zip(group.findings, group.block, strict=True))
    if case.outcome:
        step = library.step(case.outcome)
        outcome = step.title if isinstance(step, Outcome) else ""
    return CaseRow(
        tuple(_label(library, pathway, name, values) for name, values in names),
        names,
        tuple(", then ".join(case.plan.get(column, ())) for column in columns),
        outcome,
        case.acts,
        tuple(f"{place.pathway}/{place.step}" for place in case.steps),
        _remark(case),
    )


def _label(library: Library, pathway: PathwayId, name: str, values: tuple[str, ...]) -> str:
    finding = library.finding(pathway, name)
    if {value.id for value in finding.values} <= set(values):
        return ANY
    labels = {value.id: value.label for value in finding.values}
    return ", or ".join(labels.get(value, value) for value in values)


def _remark(case: Case) -> str:
    if case.problem:
        return f"PROBLEM: {case.problem}"
    if not case.improbable:
        return ""
    looked = "looked at again" if case.looked_again else "NOT looked at again"
    return f"improbable, {looked}: {case.improbable}"
