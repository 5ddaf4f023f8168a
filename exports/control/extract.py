"""From a pathway to the control of a sheet of it."""

from __future__ import annotations

from datetime import date

from chamberwise.engine.model.pathway import Pathway
from chamberwise.exports.control.content import Control


def control_of(
    pathway: Pathway,
    sheet: str,
    made: date,
    code: str,
    modules: tuple[str, ...] = (),
    unit: str | None = None,
) -> Control:
    """Return document control; `sheet` is the kind in words, `code` the stamp as typed.

    Without approval by name nobody is told as approver, whatever else the file says.
    """
    return Control(
        title=pathway.title,
        sheet=sheet,
        document=pathway.id,
        edition=pathway.edition,
        authors=pathway.authors,
        approved_by=pathway.approved_by if pathway.is_approved else None,
        approved_on=pathway.approved_on if pathway.is_approved else None,
        reviewed=pathway.reviewed,
        review_by=pathway.review_by,
        unit=unit,
        made=made,
        code=code,
        modules=modules,
    )
