"""What every screen and record says of itself: what it is for, and how far it is approved."""

from __future__ import annotations

from datetime import date

from chamberwise.engine.model.pathway import Pathway, Status

STANDING = "Rehearsal and teaching only, never live care. Follow local protocol."

NO_IDENTITY = "Never a name, number or date of birth of a patient."


def marks(pathway: Pathway, today: date) -> tuple[str, ...]:
    """Return the marks a pathway must show: DRAFT unless approved, EXPIRED past its review."""
    found = [] if pathway.is_approved else ["DRAFT"]
    if pathway.status in (Status.SUPERSEDED, Status.WITHDRAWN):
        found.append(pathway.status.upper())
    if today > pathway.review_by:
        found.append("EXPIRED")
    return tuple(found)
