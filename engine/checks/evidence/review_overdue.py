"""The pathway's review is overdue."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity

CODE = Code(
    "review-overdue",
    Severity.WARNING,
    "Past its review date",
    "Practice, kit and people change; nobody has looked whether this still holds.",
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem when today is past `review by`, or the dates contradict each other."""
    pathway = subject.pathway
    if pathway.review_by < subject.today:
        message = f"review was due by {pathway.review_by.isoformat()}"
        advice = "Review it, then set `reviewed` and `review by`; until then it shows EXPIRED."
        yield subject.problem(CODE, ("review by",), message, advice)
    elif pathway.review_by < pathway.reviewed:
        message = "`review by` lies before `reviewed`"
        advice = "Correct one of the two dates."
        yield subject.problem(CODE, ("review by",), message, advice)
