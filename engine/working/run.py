"""Working a calculation from what was typed."""

from __future__ import annotations

from collections.abc import Mapping

from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.given import given
from chamberwise.engine.working.sheet import Sheet
from chamberwise.engine.working.working import Working


def worked(
    calculation: Calculation,
    typed: Mapping[str, str],
    *,
    exact: bool = False,
    keeps_lines: bool = True,
) -> Working:
    """Return the working. Raises `RefusedError` with everything that stands against it."""
    taken = given(calculation, typed)
    sheet = Sheet(exact=exact, keeps_lines=keeps_lines)
    calculation.work(taken, sheet)
    return Working(
        name=calculation.name,
        title=calculation.title,
        given=tuple(taken.told),
        lines=tuple(sheet.lines),
        results=tuple(sheet.results),
        tables=tuple(sheet.tables),
        remarks=(*taken.remarks, *sheet.remarks),
        limits=calculation.limits,
        cautions=calculation.cautions,
        sources=calculation.sources,
    )
