"""The report of an audit in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import groupby

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.exports.audit.report import BASIS, NO_CLAIM, Found, Judged, Report
from chamberwise.exports.audit.rule import Where
from chamberwise.exports.language.values import told as told_value

SHOWN = 3
"""So many places of one fault are told; the rest is counted."""


def report_text(report: Report) -> str:
    """Return the whole report, faults first, then every rule with its worst value."""
    return "\n".join(_lines(report)) + "\n"


def _lines(report: Report) -> Iterator[str]:
    yield _("Audit of {sheet}, as printed").format(sheet=report.sheet)
    yield from report.declared
    yield f"{_(BASIS)} {_(NO_CLAIM)}"
    yield ""
    yield _count(report)
    yield from _not_measured(report)
    yield from report.said
    yield from _faults(report.found)
    yield ""
    yield _("Every rule, with the worst value measured")
    for each in report.judged:
        yield _judged(each)
    yield ""
    yield _("Marks: V read in a source, M from memory, CP common practice, C computed here.")


def _count(report: Report) -> str:
    waived = sum(bool(each.waived) for each in report.found)
    standing = Counter(str(each.severity) for each in report.found if not each.waived)
    errors, warnings, notes = (standing[name] for name in ("error", "warning", "note"))
    return ", ".join(
        (
            ngettext("{number} error", "{number} errors", errors).format(number=errors),
            ngettext("{number} warning", "{number} warnings", warnings).format(number=warnings),
            ngettext("{number} note", "{number} notes", notes).format(number=notes),
            _("{number} waived").format(number=waived),
        )
    )


def _not_measured(report: Report) -> Iterator[str]:
    number = len(report.unmeasured)
    if number:
        yield ngettext(
            "NOT MEASURED: {number} rule that knows no words of the language of this sheet.",
            "NOT MEASURED: {number} rules that know no words of the language of this sheet.",
            number,
        ).format(number=number)


def _faults(found: tuple[Found, ...]) -> Iterator[str]:
    key = "severity", "rule", "threshold"
    for _same, group in groupby(found, key=lambda each: [getattr(each, name) for name in key]):
        faults = list(group)
        first = faults[0]
        waived = _(" WAIVED: {waived}").format(waived=first.waived) if first.waived else ""
        yield ""
        yield f"{told_value(first.severity).upper()} {first.rule} {first.title}{waived}"
        yield f"  {first.threshold} [{first.mark}]"
        for each in faults[:SHOWN]:
            yield f"  {place(each.where)}: {each.measured}"
        if len(faults) > SHOWN:
            yield _("  and {number} more").format(number=len(faults) - SHOWN)


def place(where: Where) -> str:
    """Return a place in words.

    >>> place(Where(2, 30.04, 12.0, "Call for help"))
    'page 2, 30 mm right, 12 mm down, "Call for help"'
    """
    if not where.page:
        return where.text or _("the whole file")
    told = _("page {page}").format(page=where.page)
    if where.x or where.y:
        told += _(", {x} mm right, {y} mm down").format(
            x=decimal(f"{where.x:.0f}"), y=decimal(f"{where.y:.0f}")
        )
    return f'{told}, "{where.text}"' if where.text else told


def _judged(each: Judged) -> str:
    if not each.applies:
        return _("  {rule}  not for this kind of sheet").format(rule=each.rule)
    if not each.is_searched:
        return _("  {rule}  NOT MEASURED in this language; {title}").format(
            rule=each.rule, title=each.title
        )
    verdict = _("{number} found").format(number=each.faults) if each.faults else _("kept")
    worst = (
        _("; worst {worst}").format(worst=each.worst) if each.worst else _("; nothing to measure")
    )
    if not each.worst:
        verdict = _("not met with")
    return f"  {each.rule}  {verdict}{worst}; {each.threshold} [{each.mark}] {each.title}"
