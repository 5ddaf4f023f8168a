"""The table of cases as plain values for programs."""

from __future__ import annotations

from typing import Any

from chamberwise.exports.cases.content import CaseSheet


def values(sheet: CaseSheet) -> list[dict[str, Any]]:
    """Return one mapping a case: findings by name, plan by column, acts and steps in order."""
    return [
        {
            "findings": {name: _one_or_more(values) for name, values in row.names},
            "plan": dict(zip(sheet.columns, row.plan, strict=True)),
            "outcome": row.outcome,
            "acts": list(row.acts),
            "steps": list(row.steps),
            "remark": row.remark,
        }
        for row in sheet.rows
    ]


def _one_or_more(values: tuple[str, ...]) -> str | list[str]:
    return values[0] if len(values) == 1 else list(values)
