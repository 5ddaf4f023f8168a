"""Hold a sheet, placed and printed, against every rule."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.printed.read import Reader, read
from chamberwise.exports.audit.report import Found, Judged, Report
from chamberwise.exports.audit.rule import Measure, Rule, Where
from chamberwise.exports.audit.rules.registry import RULES
from chamberwise.exports.audit.subject import Subject, subject_of
from chamberwise.exports.audit.terms import Terms
from chamberwise.exports.language.values import paper_told, told
from chamberwise.exports.paper.sheet import Sheet


def audit(
    sheet: Sheet,
    pdf: bytes,
    terms: Terms,
    *,
    first: int | None = None,
    rules: Sequence[Rule] = RULES,
    reader: Reader | None = None,
) -> Report:
    """Return what is wrong with a sheet and the PDF made of it.

    `first` is the page, from nought, at which the sheet begins in a file that holds others too.
    `reader` sets the second reader to work elsewhere.
    Bytes that are no PDF raise `exports.audit.printed.read.UnreadableError`.
    """
    pages = None if first is None else range(first, first + len(sheet.pages))
    subject = subject_of(sheet, read(pdf, pages, reader), terms)
    waived = {each.rule: each.reason.strip() for each in terms.waivers if each.reason.strip()}
    found: list[Found] = []
    judged: list[Judged] = []
    for rule in rules:
        faults, verdict = apply(rule, subject, waived.get(rule.id, ""))
        found += faults
        judged.append(verdict)
    order = ("error", "warning", "note")
    found.sort(key=lambda each: (bool(each.waived), order.index(each.severity)))
    return Report(
        f"{_title(sheet, terms)}, {terms.kind.words}",
        tuple(_declared(terms)),
        tuple(found),
        tuple(judged),
        tuple(_about_waivers(terms, found)),
    )


def _title(sheet: Sheet, terms: Terms) -> str:
    return terms.control.title if terms.control else sheet.title


def apply(rule: Rule, subject: Subject, waived: str = "") -> tuple[list[Found], Judged]:
    """Return what one rule finds, and its worst value."""
    applies = subject.terms.kind in rule.kinds
    is_searched = subject.sheet.language in rule.languages
    measures = list(rule.measure(subject)) if applies and is_searched else []
    found = [each for each in (_fault(rule, one, waived) for one in measures) if each]
    worst = max(measures, key=lambda each: _rank(rule, each), default=None)
    verdict = Judged(
        rule.id,
        _(rule.title),
        str(rule.limit),
        rule.limit.severity,
        _(rule.source),
        rule.mark,
        _told(rule, worst) if worst else "",
        worst.where if worst else Where(),
        len(found),
        applies,
        is_searched,
    )
    return found, verdict


def _fault(rule: Rule, measure: Measure, waived: str) -> Found | None:
    limit = measure.limit or rule.limit
    severity = limit.judge(measure.value)
    if severity is None:
        return None
    return Found(
        rule.id,
        _(rule.title),
        _told(rule, measure),
        str(limit),
        severity,
        measure.where,
        rule.mark,
        waived,
    )


def _rank(rule: Rule, measure: Measure) -> tuple[int, bool, float]:
    """Among equals what is held to the rule's own limit speaks for the rule."""
    limit = measure.limit or rule.limit
    severity = limit.judge(measure.value)
    steps = (None, "note", "warning", "error")
    return steps.index(severity), limit == rule.limit, limit.rank(measure.value)


def _told(rule: Rule, measure: Measure) -> str:
    unit = (measure.limit or rule.limit).unit
    return measure.told or decimal(f"{round(measure.value, 2):g}") + f" {_(unit)}"


def _declared(terms: Terms) -> Iterable[str]:
    yield _("Paper {sized}").format(sized=paper_told(terms.sized))
    yield _("Light {lighting}").format(lighting=told(terms.lighting))
    if terms.distance is not None:
        yield _("To be read from {distance} m").format(distance=decimal(f"{terms.distance:g}"))
    if terms.tiling:
        tiling = terms.tiling
        yield _("Cut into {rows} by {columns} tiles").format(
            rows=tiling.rows, columns=tiling.columns
        )


def _about_waivers(terms: Terms, found: list[Found]) -> Iterable[str]:
    known = {rule.id for rule in RULES}
    hit = {each.rule for each in found}
    for waiver in terms.waivers:
        if waiver.rule not in known:
            yield _('There is no rule "{rule}": its waiver does nothing.').format(rule=waiver.rule)
        elif not waiver.reason.strip():
            yield _("The waiver for {rule} gives no reason and does nothing.").format(
                rule=waiver.rule
            )
        elif waiver.rule not in hit:
            yield _("The waiver for {rule} is not needed: nothing breaks the rule.").format(
                rule=waiver.rule
            )
