"""Hold a sheet, placed and printed, against every rule."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from chamberwise.exports.audit.printed.read import read
from chamberwise.exports.audit.report import Found, Judged, Report
from chamberwise.exports.audit.rule import Measure, Rule, Where
from chamberwise.exports.audit.rules.registry import RULES
from chamberwise.exports.audit.subject import Subject, subject_of
from chamberwise.exports.audit.terms import Terms
from chamberwise.exports.paper.sheet import Sheet


def audit(
    sheet: Sheet,
    pdf: bytes,
    terms: Terms,
    *,
    first: int | None = None,
    rules: Sequence[Rule] = RULES,
) -> Report:
    """Return what is wrong with a sheet and the PDF made of it.

    `first` is the page, from nought, at which the sheet begins in a file that holds others too.
    Bytes that are no PDF raise `exports.audit.printed.read.UnreadableError`.
    """
    pages = None if first is None else range(first, first + len(sheet.pages))
    subject = subject_of(sheet, read(pdf, pages), terms)
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
        f"{terms.control.title}, {terms.kind.words}",
        tuple(_declared(terms)),
        tuple(found),
        tuple(judged),
        tuple(_about_waivers(terms, found)),
    )


def apply(rule: Rule, subject: Subject, waived: str = "") -> tuple[list[Found], Judged]:
    """Return what one rule finds, and its worst value."""
    applies = subject.terms.kind in rule.kinds
    measures = list(rule.measure(subject)) if applies else []
    found = [each for each in (_fault(rule, one, waived) for one in measures) if each]
    worst = max(measures, key=lambda each: _rank(rule, each), default=None)
    verdict = Judged(
        rule.id,
        rule.title,
        str(rule.limit),
        rule.limit.severity,
        rule.source,
        rule.mark,
        _told(rule, worst) if worst else "",
        worst.where if worst else Where(),
        len(found),
        applies,
    )
    return found, verdict


def _fault(rule: Rule, measure: Measure, waived: str) -> Found | None:
    limit = measure.limit or rule.limit
    severity = limit.judge(measure.value)
    if severity is None:
        return None
    return Found(
        rule.id,
        rule.title,
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
    return measure.told or f"{round(measure.value, 2):g} {unit}"


def _declared(terms: Terms) -> Iterable[str]:
    yield f"Paper {terms.sized}"
    yield f"Light {terms.lighting}"
    if terms.distance is not None:
        yield f"To be read from {terms.distance:g} m"
    if terms.tiling:
        tiling = terms.tiling
        yield f"Cut into {tiling.rows} by {tiling.columns} tiles"


def _about_waivers(terms: Terms, found: list[Found]) -> Iterable[str]:
    known = {rule.id for rule in RULES}
    hit = {each.rule for each in found}
    for waiver in terms.waivers:
        if waiver.rule not in known:
            yield f'There is no rule "{waiver.rule}": its waiver does nothing.'
        elif not waiver.reason.strip():
            yield f"The waiver for {waiver.rule} gives no reason and does nothing."
        elif waiver.rule not in hit:
            yield f"The waiver for {waiver.rule} is not needed: nothing breaks the rule."
