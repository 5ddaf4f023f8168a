"""SRK/T: where it puts the lens. Retzlaff, Sanders, Kraff 1990."""

from __future__ import annotations

from decimal import Decimal

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.optics import two_lens
from chamberwise.engine.working.sheet import Sheet

LONG = Decimal("24.2")
"""Millimetres above which the length is corrected; 1.716 is the original digit, 1.715 the
erratum's: the powers differ by at most 0.06 D."""


def position(sheet: Sheet) -> None:
    """Work `r`, `L` and `ELP` from `AL`, `K` and the A-constant `A`."""
    sheet.work("r", _("radius of the cornea"), "337.5 / K", "mm")
    if sheet["AL"] > LONG:
        sheet.say(_("The eye is longer than 24.2 mm, so its length is corrected."))
        sheet.work("LC", _("corrected length"), "-3.446 + 1.716 * AL - 0.0237 * AL^2", "mm")
    else:
        sheet.say(_("The eye is no longer than 24.2 mm, so its length is taken as it is."))
        sheet.work("LC", _("corrected length"), "AL", "mm")
    sheet.work("Cw", _("width of the cornea"), "-5.41 + 0.58412 * LC + 0.098 * K", "mm")
    _height(sheet)
    sheet.work("D", _("depth of the lens by its constant"), "0.62467 * A - 68.747", "mm")
    sheet.work("ELP", _("position of the lens"), "H + D - 3.336", "mm")
    sheet.work("L", _("optical length"), "AL + 0.65696 - 0.02029 * AL", "mm")
    sheet.fix("n", "0.333", _("the cornea's index less one, by the formula"))
    sheet.fix("V", "12", _("mm from the spectacles to the cornea, by the formula"))
    two_lens.sides(sheet)


def _height(sheet: Sheet) -> None:
    under = sheet.work("S", _("under the root"), "r^2 - Cw^2 / 4")
    if under >= 0:
        sheet.work("H", _("height of the cornea"), "r - sqrt(S)", "mm")
        return
    sheet.say(_("There is no root of a number below 0: the height is taken as the radius."))
    sheet.work("H", _("height of the cornea"), "r", "mm")
    sheet.remark(
        _(
            "SRK/T: this cornea is too steep for an eye of this length; the formula falls "
            "back on its radius and is outside its physiological range."
        )
    )
