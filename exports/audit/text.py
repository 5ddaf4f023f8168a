"""The report of an audit in words."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from chamberwise.exports.audit.report import BASIS, NO_CLAIM, Found, Judged, Report
from chamberwise.exports.audit.rule import Where

SHOWN = 3
"""So many places of one fault are told; the rest is counted."""


def report_text(report: Report) -> str:
    """Return the whole report, faults first, then every rule with its worst value."""
    return "\n".join(_lines(report)) + "\n"


def _lines(report: Report) -> Iterator[str]:
    yield f"Audit of {report.sheet}, as printed"
    yield from report.declared
    yield f"{BASIS} {NO_CLAIM}"
    yield ""
    yield _count(report)
    yield from report.said
    yield from _faults(report.found)
    yield ""
    yield "Every rule, with the worst value measured"
    for each in report.judged:
        yield _judged(each)
    yield ""
    yield "Marks: V read in a source, M from memory, CP common practice, C computed here."


def _count(report: Report) -> str:
    waived = sum(bool(each.waived) for each in report.found)
    counts = [
        f"{sum(each.severity == name and not each.waived for each in report.found)} {name}s"
        for name in ("error", "warning", "note")
    ]
    return ", ".join([*counts, f"{waived} waived"])


def _faults(found: tuple[Found, ...]) -> Iterator[str]:
    key = "severity", "rule", "threshold"
    for _, group in groupby(found, key=lambda each: [getattr(each, name) for name in key]):
        faults = list(group)
        first = faults[0]
        waived = f" WAIVED: {first.waived}" if first.waived else ""
        yield ""
        yield f"{first.severity.upper()} {first.rule} {first.title}{waived}"
        yield f"  {first.threshold} [{first.mark}]"
        for each in faults[:SHOWN]:
            yield f"  {place(each.where)}: {each.measured}"
        if len(faults) > SHOWN:
            yield f"  and {len(faults) - SHOWN} more"


def place(where: Where) -> str:
    """Return a place in words.

    >>> place(Where(2, 30.04, 12.0, "Call for help"))
    'page 2, 30 mm right, 12 mm down, "Call for help"'
    """
    if not where.page:
        return where.text or "the whole file"
    told = f"page {where.page}"
    if where.x or where.y:
        told += f", {where.x:.0f} mm right, {where.y:.0f} mm down"
    return f'{told}, "{where.text}"' if where.text else told


def _judged(each: Judged) -> str:
    if not each.applies:
        return f"  {each.rule}  not for this kind of sheet"
    verdict = f"{each.faults} found" if each.faults else "kept"
    worst = f"; worst {each.worst}" if each.worst else "; nothing to measure"
    if not each.worst:
        verdict = "not met with"
    return f"  {each.rule}  {verdict}{worst}; {each.threshold} [{each.mark}] {each.title}"
