"""A pathway that calls itself approved and names nobody who approved it."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.approval.people import is_one_of
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Status

CODE = Code(
    "not-approved",
    Severity.ERROR,
    N_("Approved by nobody"),
    N_("A team would follow it as approved, and nobody stands for it."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem when the status is approved and approver or date is missing."""
    pathway = subject.loaded.source(subject.pathway.id).pathway or subject.pathway
    if pathway.status is not Status.APPROVED:
        return
    if not pathway.approved_by or not pathway.approved_on:
        message = _("the status is `approved`, and nobody is named who approved it, or when")
        advice = _("Add `approved by:` and `approved on:`, or set the status back.")
        yield subject.problem(CODE, ("status",), message, advice)
    elif is_one_of(pathway.approved_by, pathway.authors):
        message = _("{person} is author and approver").format(person=pathway.approved_by)
        advice = _("Let somebody else approve it.")
        yield subject.problem(CODE, ("approved by",), message, advice)
