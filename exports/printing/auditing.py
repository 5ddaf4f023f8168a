"""The audit of what is to go out: an approved sheet with an error does not."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.audit.audit import audit
from chamberwise.exports.audit.report import Found, Report
from chamberwise.exports.audit.terms import Terms
from chamberwise.exports.printing.printing import Laid, sheet_of
from chamberwise.exports.typesetting.compiling import to_pdf


def report_of(laid: Laid) -> Report:
    """Return the audit of one kind of sheet, made for it alone, uncut."""
    sheet, order = sheet_of((laid,)), laid.order
    terms = Terms(laid.kind, order.sized, order.control, order.distance)
    return audit(sheet, to_pdf(sheet), terms)


def told(report: Report) -> Iterator[str]:
    """Yield a line for each rule that is broken; none where the sheet may go out."""
    if report.errors:
        yield f"{report.sheet}: it is approved, and the audit finds errors. It is not printed."
    for rule in dict.fromkeys(each.rule for each in report.errors):
        first, *more = (each for each in report.errors if each.rule == rule)
        places = f"; and at {len(more)} more" if more else ""
        yield f"  - {_error(first)}{places}"


def _error(found: Found) -> str:
    where = f", page {found.where.page}" if found.where.page else ""
    words = f", “{found.where.text}”" if found.where.text else ""
    return f"{found.rule}: {found.title}: {found.measured}, {found.threshold}{where}{words}"
