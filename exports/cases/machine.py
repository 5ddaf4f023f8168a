"""The table of cases as plain values for programs."""

from __future__ import annotations

from typing import Any

from chamberwise.exports.cases.content import CaseRow, CaseSheet
from chamberwise.exports.cases.hangs import HangRow


def values(sheet: CaseSheet) -> list[dict[str, Any]]:
    """Return one mapping a case: findings by name, plan by column, acts and steps in order."""
    return [_row(sheet, row) for row in sheet.rows]


def _row(sheet: CaseSheet, row: CaseRow) -> dict[str, Any]:
    said = {
        "findings": {name: _one_or_more(values) for name, values in row.names},
        "plan": dict(zip(sheet.columns, row.plan, strict=True)),
        "outcome": row.outcome,
        "acts": list(row.acts),
        "steps": list(row.steps),
        "remark": " ".join(row.remarks),
        "not asked": list(row.not_asked),
        "hangs on": [_hang(each) for each in row.hangs_on],
        "impossible": [
            {
                "because": each.because,
                "stands at": each.stands_at or None,
                "looked at again": each.looked_at or None,
                "acts between": list(each.between),
            }
            for each in row.doubts
        ],
    }
    return said if row.may_end_in is None else {**said, "may end in": list(row.may_end_in)}


def _hang(hang: HangRow) -> dict[str, Any]:
    otherwise: list[dict[str, Any]] = [
        {"value": each.value, "changes": list(each.changes)}
        | ({"once": dict([each.once])} if each.once else {})
        for each in hang.others
    ]
    return {
        "kind": hang.kind,
        "finding": hang.finding,
        "value": hang.value,
        "otherwise": otherwise,
    }


def _one_or_more(values: tuple[str, ...]) -> str | list[str]:
    return values[0] if len(values) == 1 else list(values)
