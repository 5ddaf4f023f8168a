"""The table of cases: every combination of the assessment findings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from itertools import product

from chamberwise.engine.cases.case import Case, onward, run_case
from chamberwise.engine.cases.hanging import with_hangs
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import CaseTable
from chamberwise.engine.model.step import CANNOT_TELL, PathwayId
from chamberwise.engine.model.words import FindingId, ValueId

Assumed = Mapping[FindingId, ValueId]


def cases(
    library: Library,
    pathway: PathwayId,
    assume: Assumed | None = None,
    *,
    cannot_tell: bool = False,
) -> tuple[Case, ...]:
    """Return every case in document order; `assume` stands before the table's own assumptions.

    Raises `ValueError` for a pathway without a table.
    """
    table = _table(library, pathway, assume)
    axes = [_values(library, pathway, name, cannot_tell=cannot_tell) for name in table.over]
    made = onward(library)
    return tuple(
        run_case(library, pathway, tuple(zip(table.over, values, strict=True)), table, made)
        for values in product(*axes)
    )


def whole_cases(
    library: Library,
    pathway: PathwayId,
    assume: Assumed | None = None,
    *,
    cannot_tell: bool = False,
) -> tuple[Case, ...]:
    """Return every case as `cases` does, each with what it hangs on."""
    found = cases(library, pathway, assume, cannot_tell=cannot_tell)
    table = _table(library, pathway, assume)
    return with_hangs(library, pathway, table, found, cannot_tell=cannot_tell)


def _table(library: Library, pathway: PathwayId, assume: Assumed | None) -> CaseTable:
    table = library.pathways[pathway].cases
    if table is None:
        raise ValueError(f"`{pathway}` has no `cases:`")
    return replace(table, assume=tuple({**dict(table.assume), **(assume or {})}.items()))


def _values(
    library: Library, pathway: PathwayId, finding: FindingId, *, cannot_tell: bool
) -> tuple[ValueId, ...]:
    values = tuple(value.id for value in library.finding(pathway, finding).values)
    return (*values, CANNOT_TELL) if cannot_tell else values
