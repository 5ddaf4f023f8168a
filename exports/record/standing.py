"""What every screen and record says of itself: what it is for, and how far it is approved."""

from __future__ import annotations

from datetime import date

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway, Status
from chamberwise.exports.language.values import told

STANDING = N_("Rehearsal and teaching only, never live care. Follow local protocol.")

NO_IDENTITY = N_("Never a name, number or date of birth of a patient.")


def marks(pathway: Pathway, today: date) -> tuple[str, ...]:
    """Return the marks a pathway must show: DRAFT unless approved, EXPIRED past its review."""
    found = [] if pathway.is_approved else [_("DRAFT")]
    if pathway.status in (Status.SUPERSEDED, Status.WITHDRAWN):
        found.append(told(pathway.status).upper())
    if today > pathway.review_by:
        found.append(_("EXPIRED"))
    return tuple(found)
