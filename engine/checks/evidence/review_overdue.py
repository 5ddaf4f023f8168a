"""The pathway's review is overdue."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

CODE = Code(
    "review-overdue",
    Severity.WARNING,
    N_("Past its review date"),
    N_("Practice, kit and people change; nobody has looked whether this still holds."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem when today is past `review by`, or the dates contradict each other."""
    pathway = subject.pathway
    if pathway.review_by < subject.today:
        message = _("review was due by {day}").format(day=pathway.review_by.isoformat())
        advice = _("Review it, then set `reviewed` and `review by`; until then it shows EXPIRED.")
        yield subject.problem(CODE, ("review by",), message, advice)
    elif pathway.review_by < pathway.reviewed:
        message = _("`review by` lies before `reviewed`")
        advice = _("Correct one of the two dates.")
        yield subject.problem(CODE, ("review by",), message, advice)
