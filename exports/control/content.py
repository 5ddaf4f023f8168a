"""Document control of a printed sheet: who stands for it, until when, and how to ask after it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

DRAFT = "DRAFT: NOT APPROVED FOR CLINICAL USE"
EXPIRED = "EXPIRED: PAST ITS REVIEW DATE"
TEMPLATE = "TEMPLATE: ADAPT LOCALLY"
SWITCHED_OFF = "SAFETY RULE SWITCHED OFF HERE: SEE THE FOOT"
NOT_SET = "NOT SET LOCALLY"
"""For what a unit has to fill in."""
FOLLOW = "Follow local protocol."
PURPOSE = (
    "For trained eye surgery staff: rehearsal, teaching and preparing local charts. "
    "No substitute for judgement. Check every dose against the local formulary."
)


@dataclass(frozen=True, slots=True)
class Control:
    """All that the foot of a page has to say."""

    title: str
    sheet: str
    """What kind of sheet it is, as "wall chart"."""
    document: str
    edition: str
    authors: tuple[str, ...]
    approved_by: str | None
    approved_on: date | None
    reviewed: date
    review_by: date
    unit: str | None
    made: date
    code: str
    """The stamp, as people type it."""
    modules: tuple[str, ...]
    """The stamp as a square of modules, for a camera."""
    over: str = ""
    """The edition of the pathway below a unit's sheet, whose own is then `edition`."""
    switched_off: tuple[tuple[str, str], ...] = ()
    """The safety rules that the unit has switched off, each with who, when and why."""
    asked_with: str = "chamberwise stamp"
    """What to type before the stamp to learn whether the sheet is current."""
    translation_mark: str = ""
    """What the head says of a sheet whose texts are a translation; nothing of any other."""
    translation: str = ""
    """How far the translation was read, and how much of it stands in English."""

    @property
    def marks(self) -> tuple[str, ...]:
        """What is printed across the head of every page, worst first."""
        expired = (EXPIRED,) if self.made > self.review_by else ()
        draft = () if self.approved_by else (DRAFT,)
        template = () if self.unit else (TEMPLATE,)
        off = (SWITCHED_OFF,) if self.switched_off else ()
        translation = (self.translation_mark,) if self.translation_mark else ()
        return (*expired, *draft, *translation, *off, *template)


def day(when: date) -> str:
    """Return a date that nobody takes for another.

    >>> day(date(2026, 3, 7))
    '07 Mar 2026'
    """
    months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"]
    return f"{when.day:02} {months[when.month - 1]} {when.year}"
