"""Holladay 1: where it puts the lens. Holladay and others 1988."""

from __future__ import annotations

from decimal import Decimal

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.optics import two_lens
from chamberwise.engine.working.sheet import Sheet

WIDEST = Decimal("13.5")
"""Millimetres; the width of the chamber grows no further with the length of the eye."""


def position(sheet: Sheet) -> None:
    """Work `r`, `L` and `ELP` from `AL`, `K` and the surgeon factor `SF`."""
    sheet.work("r", _("radius of the cornea"), "337.5 / K", "mm")
    sheet.work("Rag", _("radius for the depth, at least 7 mm"), "max(r, 7)", "mm")
    sheet.work(
        "AG", _("width of the chamber, at most 13.5 mm"), "min(12.5 * AL / 23.45, 13.5)", "mm"
    )
    if sheet["Rag"] > sheet["r"]:
        sheet.remark(_("Holladay 1: the formula's own limit on the radius, 7 mm, was met."))
    if sheet["AG"] == WIDEST:
        sheet.remark(_("Holladay 1: the formula's own limit on the width, 13.5 mm, was met."))
    sheet.work("D", _("depth of the iris"), "0.56 + Rag - sqrt(Rag^2 - AG^2 / 4)", "mm")
    sheet.work("ELP", _("position of the lens"), "D + SF", "mm")
    sheet.work("L", _("optical length"), "AL + 0.2", "mm")
    sheet.work("n", _("the cornea's index less one"), "1 / 3")
    sheet.fix("V", "12", _("mm from the spectacles to the cornea, by the formula"))
    two_lens.sides(sheet)
