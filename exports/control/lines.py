"""The lines at the foot of a page."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import FOLLOW, PURPOSE, Control, day
from chamberwise.exports.flow.holding import unparted
from chamberwise.exports.language.unreviewed import unreviewed_notice
from chamberwise.exports.paper.sheet import Run, Weight

WHOLE = 48
"""Letters: what is shorter stands on one line of the foot."""
COPIES = N_("A printed copy is not kept current: ask with {command}.")


def rule_of_use() -> tuple[Run, ...]:
    """Return what every page says first."""
    return (Run(_(FOLLOW), Weight.BOLD), Run(" " + _(PURPOSE)))


def identity(control: Control) -> str:
    """Return which document this is and who stands for it, on one line."""
    parts = (f"{part.rstrip('.')}." for part in identified(control))
    return " ".join(unparted(part) if len(part) < WHOLE else part for part in parts)


def identified(control: Control) -> tuple[str, ...]:
    """Return which document this is and who stands for it, each by itself."""
    return (
        f"{control.title}, {control.sheet}",
        control.unit or _("No unit named"),
        _document(control),
        _("Author: {authors}").format(authors=", ".join(control.authors)),
        approval(control),
        _("Reviewed {reviewed}").format(reviewed=day(control.reviewed)),
    )


def until(control: Control) -> str:
    """Return when the paper is out of date."""
    return _("{review_by}, out of date after that").format(
        review_by=_("Review by {review_by}").format(review_by=day(control.review_by))
    )


def page_told(page: int, pages: int, holds: str = "") -> str:
    """Return which page it is, and what is looked up on it."""
    told = _("Page {page} of {pages}").format(page=page, pages=pages)
    return f"{holds} \u00b7 {told}" if holds else told


def _document(control: Control) -> str:
    told = _("Document {name}, edition {edition}")
    if control.over:
        told = _("Document {name}, edition {edition} over edition {over}")
    return told.format(
        name=_unhyphenated(control.document), edition=control.edition, over=control.over
    )


def approval(control: Control) -> str:
    """Return who approved it and when; of a translation, that it is the English text that was."""
    if not control.approved_by:
        return _("Approved by nobody")
    who, on = control.approved_by, control.approved_on and day(control.approved_on)
    if control.translation:
        return _("Approved by nobody; the English text by {who}").format(who=who)
    if on:
        return _("Approved by {who} on {day}").format(who=who, day=on)
    return _("Approved by {who}").format(who=who)


def translated(control: Control) -> tuple[Run, ...]:
    """Return how far a translation was read; nothing of a sheet in English."""
    notice: tuple[Run, ...] = ()
    if control.translation:
        notice = (
            Run(unreviewed_notice(control.translation), Weight.BOLD),
            Run(" " + _("Hold it against the English sheet before anybody relies on it.")),
        )
    elif control.translation_by:
        own_words = _("Headings and marks are the program's words, which nobody has reviewed.")
        notice = (Run(f"{control.translation_by} {own_words}"),)
    texts = (Run(" " * bool(notice) + control.texts, Weight.BOLD),) if control.texts else ()
    return (*notice, *texts)


def exceptions(control: Control) -> tuple[Run, ...]:
    """Return every safety rule switched off, with who did it, when and why."""
    if not control.switched_off:
        return ()
    told = " ".join(f"{title} ({why.rstrip('.')})." for title, why in control.switched_off)
    return (Run(_("Switched off here: "), Weight.BOLD), Run(told))


def _unhyphenated(name: str) -> str:
    """Return words that no line end parts at a hyphen."""
    return name.replace("-", "\u2011")


def currency(control: Control, far: str) -> str:
    """Return how to learn whether the paper is current, and from how far it is read."""
    asked = unparted(_unhyphenated(f"{control.asked_with} {control.code}"))
    return " ".join(
        (
            _("Stamp {code}. Printed {day}.").format(code=control.code, day=day(control.made)),
            _(COPIES).format(command=asked),
            far,
            _("Print at 100\u00a0%: the bar is 100\u00a0mm."),
        )
    )
