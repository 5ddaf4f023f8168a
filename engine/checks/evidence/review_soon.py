"""The pathway's review comes up."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_, ngettext
from chamberwise.engine.language.texts import gettext as _

CODE = Code(
    "review-soon",
    Severity.NOTICE,
    N_("A review that comes up"),
    N_("A review takes weeks; past its date every sheet of the pathway is marked EXPIRED."),
)
AHEAD = timedelta(days=60)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a notice in the sixty days before `review by`."""
    due = subject.pathway.review_by
    is_ahead = max(subject.today, subject.pathway.reviewed) <= due
    if is_ahead and due - subject.today <= AHEAD:
        days = (due - subject.today).days
        message = ngettext(
            "review is due by {day}, in {days} day", "review is due by {day}, in {days} days", days
        ).format(day=due.isoformat(), days=days)
        advice = _("Ask those who know the pathway now, then set `reviewed` and `review by`.")
        yield subject.problem(CODE, ("review by",), message, advice)
