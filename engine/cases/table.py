"""The table of cases: every combination of the assessment findings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from itertools import product

from chamberwise.engine.cases.case import Case, Combination, run_case
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import CANNOT_TELL, PathwayId
from chamberwise.engine.model.words import FindingId, ValueId

ANY = "any"


def cases(
    library: Library,
    pathway: PathwayId,
    assume: Mapping[FindingId, ValueId] | None = None,
    *,
    cannot_tell: bool = False,
) -> tuple[Case, ...]:
    """Return every case in document order; `assume` stands before the table's own assumptions.

    Raises `ValueError` for a pathway without a table.
    """
    table = library.pathways[pathway].cases
    if table is None:
        raise ValueError(f"`{pathway}` has no `cases:`")
    table = replace(table, assume=tuple({**dict(table.assume), **(assume or {})}.items()))
    axes = [_values(library, pathway, name, cannot_tell=cannot_tell) for name in table.over]
    return tuple(
        run_case(library, pathway, tuple(zip(table.over, values, strict=True)), table)
        for values in product(*axes)
    )


def _values(
    library: Library, pathway: PathwayId, finding: FindingId, *, cannot_tell: bool
) -> tuple[ValueId, ...]:
    values = tuple(value.id for value in library.finding(pathway, finding).values)
    return (*values, CANNOT_TELL) if cannot_tell else values


def condensed(found: tuple[Case, ...]) -> tuple[Case, ...]:
    """Return fewer rows that say the same: where every value of an axis leads alike, `any`."""
    rows = list(found)
    if not rows:
        return ()
    for axis in reversed(range(len(rows[0].combination))):
        every = {case.combination[axis][1] for case in found}
        rows = _merged(rows, axis, every)
    return tuple(rows)


def _merged(rows: list[Case], axis: int, every: set[ValueId]) -> list[Case]:
    alike: dict[object, list[Case]] = {}
    for case in rows:
        alike.setdefault((_others(case.combination, axis), _result(case)), []).append(case)
    merged = []
    for group in alike.values():
        values = {case.combination[axis][1] for case in group}
        if values == every and len(every) > 1:
            name = group[0].combination[axis][0]
            combination = list(group[0].combination)
            combination[axis] = (name, ANY)
            merged.append(replace(group[0], combination=tuple(combination)))
        else:
            merged += group
    return merged


def _others(combination: Combination, axis: int) -> Combination:
    return combination[:axis] + combination[axis + 1 :]


def _result(case: Case) -> object:
    plan = tuple(sorted(case.plan.items()))
    return plan, case.outcome, case.improbable, case.looked_again, case.problem
