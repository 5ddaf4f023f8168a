"""The case table, to order."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.case_sheet.content import CaseTablePaper
from chamberwise.exports.case_sheet.extract import case_table
from chamberwise.exports.case_sheet.placing import case_pages
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.printing.order import Made, Order, UnfitError

HOW = (
    N_("Add `cases:` with `over:` (the findings to combine) and `assume:` (every other answer)."),
    N_("See “The table of cases” in the guide to writing a pathway."),
)


def make(order: Order) -> Made:
    """Return the pages on the paper asked for. Raises `UnfitError`, also without a table."""
    table = case_table(order.library, order.pathway)
    if table is None:
        raise UnfitError(_("This pathway has no table of cases."), tuple(map(_, HOW)))
    frame = Frame(order.ruler, order.control, order.sized.format)
    return Made(tuple(case_pages(frame, table)), _told(table))


def _told(table: CaseTablePaper) -> tuple[str, ...]:
    """Return what the person who prints it should know: how complete the table is."""
    return (table.completeness,)
