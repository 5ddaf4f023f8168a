"""The lines at the foot of a page."""

from __future__ import annotations

from chamberwise.exports.control.content import FOLLOW, PURPOSE, Control, day
from chamberwise.exports.paper.sheet import Run, Weight


def rule_of_use() -> tuple[Run, ...]:
    """Return what every page says first."""
    return (Run(FOLLOW, Weight.BOLD), Run(" " + PURPOSE))


def identity(control: Control, page: int, pages: int) -> str:
    """Return which document this is, who stands for it, until when."""
    approved = f"Approved by {control.approved_by}" if control.approved_by else "Approved by nobody"
    if control.approved_by and control.approved_on:
        approved += f" on {day(control.approved_on)}"
    parts = (
        f"{control.title}, {control.sheet}",
        control.unit or "No unit named",
        f"Document {_whole(control.document)}, edition {control.edition}{_over(control)}",
        f"Author: {', '.join(control.authors)}",
        approved,
        f"Reviewed {day(control.reviewed)}",
        f"Review by {day(control.review_by)}",
        f"Page {page} of {pages}",
    )
    return "\u2002\u00b7\u2002".join(part.replace(" ", "\u00a0") for part in parts)


def _over(control: Control) -> str:
    return f" over edition {control.over}" if control.over else ""


def exceptions(control: Control) -> tuple[Run, ...]:
    """Return how far a translation was read, then every safety rule switched off.

    Of a rule is said who switched it off, when and why.
    """
    translation = (Run(control.translation, Weight.BOLD),) if control.translation else ()
    if not control.switched_off:
        return translation
    told = " ".join(f"{title} ({why.rstrip('.')})." for title, why in control.switched_off)
    between = (Run(" "),) if translation else ()
    return (*translation, *between, Run("Switched off here: ", Weight.BOLD), Run(told))


def _whole(name: str) -> str:
    """Return a name that no line end parts: hyphens that do not break."""
    return name.replace("-", "\u2011")


def currency(control: Control, far: str) -> str:
    """Return how to learn whether the paper is current, and from how far it is read."""
    asked = f"{control.asked_with} {control.code}".replace(" ", "\u00a0")
    return (
        f"Stamp {control.code}. Printed {day(control.made)}. A printed copy is not kept current: "
        f"ask with {asked}. {far} "
        "Print at 100\u00a0%: the bar is 100\u00a0mm."
    )
