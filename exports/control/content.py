"""Document control of a printed sheet: who stands for it, until when, and how to ask after it."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.language.unreviewed import unreviewed_language

DRAFT = N_("DRAFT: NOT APPROVED FOR CLINICAL USE")
EXPIRED = N_("EXPIRED: PAST ITS REVIEW DATE")
TEMPLATE = N_("TEMPLATE: ADAPT LOCALLY")
SWITCHED_OFF = N_("SAFETY RULE SWITCHED OFF HERE: SEE THE FOOT")
UNREVIEWED = N_("TRANSLATION NOT REVIEWED")
NOT_SET = N_("NOT SET LOCALLY")
"""For what a unit has to fill in."""
FOLLOW = N_("Follow local protocol.")
PURPOSE = N_(
    "For trained eye surgery staff: rehearsal, teaching and preparing local charts. No "
    "substitute for judgement. Check every dose against the local formulary."
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
    translation: str = field(default_factory=unreviewed_language)
    """What the language of the sheet calls itself, where no clinician has reviewed it."""
    translation_by: str = ""
    """Of a translation that was approved: who stands for it and since when, as a sentence."""
    texts: str = ""
    """How much of the pathway stands in English on a translated sheet."""

    @property
    def is_approved(self) -> bool:
        """Whether the sheet counts as approved, in the language it is in."""
        return bool(self.approved_by) and not self.translation

    @property
    def marks(self) -> tuple[str, ...]:
        """What is printed across the head of every page, worst first."""
        expired = (_(EXPIRED),) if self.made > self.review_by else ()
        draft = () if self.is_approved else (_(DRAFT),)
        template = () if self.unit else (_(TEMPLATE),)
        off = (_(SWITCHED_OFF),) if self.switched_off else ()
        foreign = (_(UNREVIEWED),) if self.translation else ()
        return (*expired, *draft, *off, *foreign, *template)


def day(when: date) -> str:
    """Return a date that nobody takes for another.

    >>> day(date(2026, 3, 7))
    '07 Mar 2026'
    """
    months = [
        _("Jan"),
        _("Feb"),
        _("Mar"),
        _("Apr"),
        _("May"),
        _("Jun"),
        _("Jul"),
        _("Aug"),
        _("Sep"),
        _("Oct"),
        _("Nov"),
        _("Dec"),
    ]
    return _("{day} {month} {year}").format(
        day=f"{when.day:02}", month=months[when.month - 1], year=when.year
    )
