"""The foot says all that document control asks for."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.kinds import CONTROLLED
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.control.content import Control, day

UNBROKEN = "\u2011"
"""The hyphen at which no line ends, as the foot has it in the name of the document."""


def fields(control: Control, page: int, pages: int) -> dict[str, str]:
    """Return what the foot must say, by what it is."""
    return {
        _("title"): control.title,
        _("document"): control.document,
        _("edition"): _("edition {edition}").format(edition=control.edition),
        _("author"): ", ".join(control.authors),
        _("approver"): _approver(control),
        _("date of issue"): day(_issued(control)),
        _("review date"): _("Review by {review_by}").format(review_by=day(control.review_by)),
        _("page number"): _("Page {page} of {pages}").format(page=page, pages=pages),
    }


def _approver(control: Control) -> str:
    """A translation that nobody has reviewed has no approver, whoever stands for the English."""
    if not control.is_approved:
        return _("Approved by nobody")
    return _("Approved by {who}").format(who=control.approved_by)


def _issued(control: Control) -> date:
    return (control.approved_on if control.is_approved else None) or control.reviewed


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        printed = _bare(side.text)
        for name, words in fields(subject.control, side.number, len(subject.sides)).items():
            is_missing = not words.strip() or _bare(words) not in printed
            yield counted(
                is_missing, side.top, _("no {name}: {words}").format(name=name, words=repr(words))
            )


def _bare(text: str) -> str:
    """A line may break anywhere in the foot, also after a hyphen."""
    return "".join(text.split()).replace(UNBROKEN, "-").lower()


RULE = Rule(
    id="DOC-01",
    title=N_("Title, document, edition, author, approver, dates and page in the foot"),
    limit=NO_FAULT,
    source=N_("ISO 9001 clause 7.5, read in copies"),
    mark=Mark.VERIFIED,
    measure=_measure,
    kinds=CONTROLLED,
)
