"""The report of an audit as plain values, for programs."""

from __future__ import annotations

from typing import Any

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.report import BASIS, NO_CLAIM, Found, Judged, Report
from chamberwise.exports.audit.rule import Where


def report_values(report: Report) -> dict[str, Any]:
    """Return a report as one mapping that JSON can hold."""
    return {
        "basis": f"{_(BASIS)} {_(NO_CLAIM)}",
        "sheet": report.sheet,
        "declared": list(report.declared),
        "said": list(report.said),
        "stops": bool(report.errors),
        "found": [_found(each) for each in report.found],
        "rules": [_judged(each) for each in report.judged],
    }


def _found(each: Found) -> dict[str, Any]:
    return {
        "rule": each.rule,
        "title": each.title,
        "measured": each.measured,
        "threshold": each.threshold,
        "severity": each.severity.value,
        "where": _where(each.where),
        "mark": each.mark.value,
        "waived": each.waived,
    }


def _judged(each: Judged) -> dict[str, Any]:
    return {
        "rule": each.rule,
        "title": each.title,
        "threshold": each.threshold,
        "severity": each.severity.value,
        "source": each.source,
        "mark": each.mark.value,
        "applies": each.applies,
        "worst": each.worst,
        "where": _where(each.where),
        "faults": each.faults,
    } | ({} if each.is_searched else {"not measured in this language": True})


def _where(where: Where) -> dict[str, Any]:
    return {
        "page": where.page,
        "x": round(where.x, 2),
        "y": round(where.y, 2),
        "text": where.text,
    }
