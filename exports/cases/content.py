"""The table of cases as plain rows, from what the engine found."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from chamberwise.engine.cases.case import Case
from chamberwise.engine.cases.doubt import Doubt
from chamberwise.engine.cases.grouping import CaseGroup
from chamberwise.engine.cases.hang import Taken
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Outcome, PathwayId
from chamberwise.engine.model.words import FindingId, ValueId
from chamberwise.exports.cases.hangs import HangRow, Note, hang_row, notes
from chamberwise.exports.language.joining import alternatives, one_after_another

ANY = N_("any")


@dataclass(frozen=True, slots=True)
class DoubtRow:
    """A declaration that calls the combination impossible, and what the walk made of it.

    `stands_at` and `looked_at` are steps, empty where there is none.
    """

    because: str
    stands_at: str
    looked_at: str
    between: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CaseRow:
    """One row: labels of the findings, the plan by column, the outcome, and remarks.

    `marks` are those of the notes that say what the row hangs on, where not every row does;
    `may_end_in` the outcomes over every walk, where they were asked for.
    """

    findings: tuple[str, ...]
    names: tuple[tuple[str, tuple[str, ...]], ...]
    plan: tuple[str, ...]
    outcome: str
    acts: tuple[str, ...]
    steps: tuple[str, ...]
    remarks: tuple[str, ...]
    hangs_on: tuple[HangRow, ...] = ()
    marks: tuple[str, ...] = ()
    doubts: tuple[DoubtRow, ...] = ()
    not_asked: tuple[str, ...] = ()
    may_end_in: tuple[str, ...] | None = None


@dataclass(frozen=True, slots=True)
class CaseSheet:
    """The whole table: its title, the heads of findings and of plan columns, and the rows."""

    title: str
    findings: tuple[str, ...]
    columns: tuple[str, ...]
    rows: tuple[CaseRow, ...]
    assumed: tuple[tuple[str, str], ...] = ()
    """What is taken for granted: findings with the label of the value assumed."""
    notes: tuple[Note, ...] = ()
    """What rows hang on, each with its mark."""
    all_hang_on: tuple[str, ...] = ()
    """The marks of what every row hangs on."""
    completeness: str = ""


Ends = Mapping[tuple[tuple[FindingId, ValueId], ...], tuple[Place, ...]]
"""By combination the outcomes that some walk ends in."""


def case_sheet(
    library: Library,
    pathway: PathwayId,
    groups: Sequence[CaseGroup],
    assumed: Mapping[FindingId, ValueId] | None = None,
    *,
    completeness: str = "",
    ends: Ends | None = None,
) -> CaseSheet:
    """Return the table of some cases of a pathway, labelled as the pathway labels them."""
    plans = sorted((group.case.plan for group in groups), key=len, reverse=True)
    columns = tuple(dict.fromkeys(column for plan in plans for column in plan))
    findings = groups[0].findings if groups else ()
    heads = tuple(library.finding(pathway, name).title for name in findings)
    noted = notes(library, pathway, groups)
    common = [
        each for each in noted if len(groups) > 1 and all(each in row.hangs_on for row in groups)
    ]
    marks = {each: note.mark for each, note in noted.items() if each not in common}
    rows = tuple(_row(library, pathway, group, columns, marks, ends) for group in groups)
    taken = tuple(
        (library.finding(pathway, name).title, _label(library, pathway, name, (value,)))
        for name, value in (assumed or {}).items()
    )
    return CaseSheet(
        library.pathways[pathway].title,
        heads,
        columns,
        rows,
        taken,
        tuple(noted.values()),
        tuple(noted[each].mark for each in common),
        completeness,
    )


def _row(
    library: Library,
    pathway: PathwayId,
    group: CaseGroup,
    columns: tuple[str, ...],
    marks: Mapping[Taken, str],
    ends: Ends | None,
) -> CaseRow:
    case = group.case
    names = tuple(zip(group.findings, group.block, strict=True))
    return CaseRow(
        tuple(_label(library, pathway, name, values) for name, values in names),
        names,
        tuple(one_after_another(case.plan.get(column, ())) for column in columns),
        _title(library, case.outcome) if case.outcome else "",
        case.acts,
        tuple(_named(place) for place in case.steps),
        tuple(_remarks(case)),
        tuple(hang_row(each) for each in case.hangs_on),
        tuple(mark for each, mark in marks.items() if each in group.hangs_on),
        tuple(_doubt(each) for each in case.doubts),
        case.not_asked,
        tuple(_named(each) for each in ends[case.combination]) if ends else None,
    )


def _title(library: Library, place: Place) -> str:
    step = library.step(place)
    return step.title if isinstance(step, Outcome) else ""


def _named(place: Place | None) -> str:
    return f"{place.pathway}/{place.step}" if place else ""


def _doubt(doubt: Doubt) -> DoubtRow:
    stands, looked = _named(doubt.stands_at), _named(doubt.looked_at)
    return DoubtRow(doubt.because, stands, looked, doubt.between)


def _label(library: Library, pathway: PathwayId, name: str, values: tuple[str, ...]) -> str:
    finding = library.finding(pathway, name)
    if {value.id for value in finding.values} <= set(values):
        return _(ANY)
    labels = {value.id: value.label for value in finding.values}
    return alternatives(labels.get(value, value) for value in values)


def _remarks(case: Case) -> Iterator[str]:
    if case.problem:
        yield _("PROBLEM: {problem}.").format(problem=case.problem)
    for each in case.doubts:
        if each.stands_at is None:
            yield _("improbable, never told in full on the way: {because}").format(
                because=each.because
            )
        else:
            looked = _("looked at again") if each.looked_at else _("NOT looked at again")
            yield _("improbable, {looked}: {because}").format(looked=looked, because=each.because)
