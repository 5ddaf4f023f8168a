"""What is told of the audits of what is to go out. Nothing here loads what audits."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.exports.audit.report import Found, Report
from chamberwise.exports.audit.terms import Waiver


def told(report: Report) -> Iterator[str]:
    """Yield a line for each rule that is broken; none where the sheet may go out."""
    if report.errors:
        yield _("{sheet}: it is approved, and the audit finds errors. It is not printed.").format(
            sheet=report.sheet
        )
    yield from _errors(report)


def told_of_paper(report: Report) -> Iterator[str]:
    """Yield a line for each rule that a paper breaks which is written all the same."""
    if report.errors:
        yield _("The audit finds errors on the paper that was written:")
    yield from _errors(report)


def _errors(report: Report) -> Iterator[str]:
    for rule in dict.fromkeys(each.rule for each in report.errors):
        first, *more = (each for each in report.errors if each.rule == rule)
        places = _("; and at {count} more").format(count=len(more)) if more else ""
        yield f"  - {_error(first)}{places}"


def told_of_draft(reports: Iterable[Report]) -> Iterator[str]:
    """Yield one line where sheets that are printed all the same have errors."""
    count = sum(len(each.errors) for each in reports)
    if count:
        yield ngettext(
            "The audit found {number} error: the report shows them.",
            "The audit found {number} errors: the report shows them.",
            count,
        ).format(number=count)


def told_of_waivers(reports: Sequence[Report], waivers: Iterable[Waiver]) -> Iterator[str]:
    """Yield what each waiver let through, and which was not needed."""
    for waiver in waivers:
        let = [found for each in reports for found in each.of(waiver.rule) if found.waived]
        errors = sum(found.severity == "error" for found in let)
        if errors:
            yield ngettext(
                "Waived {rule} at {number} place: {reason}",
                "Waived {rule} at {number} places: {reason}",
                errors,
            ).format(rule=waiver.rule, number=errors, reason=waiver.reason)
        else:
            yield _("The waiver for {rule} is not needed: no sheet breaks the rule.").format(
                rule=waiver.rule
            )


def _error(found: Found) -> str:
    where = _(", page {page}").format(page=found.where.page) if found.where.page else ""
    words = f", “{found.where.text}”" if found.where.text else ""
    return f"{found.rule}: {found.title}: {found.measured}, {found.threshold}{where}{words}"
