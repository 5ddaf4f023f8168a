"""Hoffer Q: where it puts the lens. Hoffer 1993, with the signs of the errata of 1994."""

from __future__ import annotations

from decimal import Decimal

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.sheet import Sheet

SHORT = Decimal(23)
"""Millimetres up to which an eye counts as short; the sign of M turns there."""


def position(sheet: Sheet) -> None:
    """Work `ELP`, from the cornea to the lens's plane, from `AL`, `K` and `pACD`."""
    if sheet["AL"] <= SHORT:
        sheet.say(_("The eye is no longer than 23 mm: M = 1, G = 28."))
        sheet.take("M", "1")
        sheet.take("G", "28")
    else:
        sheet.say(_("The eye is longer than 23 mm: M = -1, G = 23.5."))
        sheet.take("M", "-1")
        sheet.take("G", "23.5")
    sheet.work(
        "L", _("length for the depth, held from 18.5 to 31 mm"), "min(max(AL, 18.5), 31)", "mm"
    )
    if sheet["L"] != sheet["AL"]:
        sheet.remark(
            _("Hoffer Q: the formula's own limits on the length, 18.5 and 31 mm, were met.")
        )
    sheet.say(_("Angles are in degrees."))
    sheet.work("Q", _("of the cornea"), "tan(K)^2")
    sheet.work("U", _("of the length"), "0.1 * M * (23.5 - L)^2 * tan(0.1 * (G - L)^2)")
    sheet.work("C", _("depth of the chamber"), "pACD + 0.3 * (L - 23.5) + Q + U - 0.99166", "mm")
    sheet.work("ELP", _("position of the lens"), "C + 0.05", "mm")
    sheet.fix("V", "12", _("mm from the spectacles to the cornea, by the formula"))
