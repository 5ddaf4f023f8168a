"""The foot says all that document control asks for."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, counted
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.control.content import Control, day

UNBROKEN = "\u2011"
"""The hyphen at which no line ends, as the foot has it in the name of the document."""


def fields(control: Control, page: int, pages: int) -> dict[str, str]:
    """Return what the foot must say, by what it is."""
    return {
        "title": control.title,
        "document": control.document,
        "edition": f"edition {control.edition}",
        "author": ", ".join(control.authors),
        "approver": f"Approved by {control.approved_by or 'nobody'}",
        "date of issue": day(control.approved_on or control.reviewed),
        "review date": f"Review by {day(control.review_by)}",
        "page number": f"Page {page} of {pages}",
    }


def _measure(subject: Subject) -> Iterator[Measure]:
    for side in subject.sides:
        printed = _bare(side.text)
        for name, words in fields(subject.terms.control, side.number, len(subject.sides)).items():
            is_missing = not words.strip() or _bare(words) not in printed
            yield counted(is_missing, side.top, f"no {name}: {words!r}")


def _bare(text: str) -> str:
    """A line may break anywhere in the foot, also after a hyphen."""
    return "".join(text.split()).replace(UNBROKEN, "-").lower()


RULE = Rule(
    id="DOC-01",
    title="Title, document, edition, author, approver, dates and page in the foot",
    limit=NO_FAULT,
    source="ISO 9001 clause 7.5, read in copies",
    mark=Mark.VERIFIED,
    measure=_measure,
)
