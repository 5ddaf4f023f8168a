"""SRK/T: where it puts the lens. Retzlaff, Sanders, Kraff 1990."""

from __future__ import annotations

from decimal import Decimal

from chamberwise.engine.working.optics import two_lens
from chamberwise.engine.working.sheet import Sheet

LONG = Decimal("24.2")
"""Millimetres above which the length is corrected; 1.716 is the original digit, 1.715 the
erratum's: the powers differ by at most 0.06 D."""


def position(sheet: Sheet) -> None:
    """Work `r`, `L` and `ELP` from `AL`, `K` and the A-constant `A`."""
    sheet.work("r", "radius of the cornea", "337.5 / K", "mm")
    if sheet["AL"] > LONG:
        sheet.say("The eye is longer than 24.2 mm, so its length is corrected.")
        sheet.work("LC", "corrected length", "-3.446 + 1.716 * AL - 0.0237 * AL^2", "mm")
    else:
        sheet.say("The eye is no longer than 24.2 mm, so its length is taken as it is.")
        sheet.work("LC", "corrected length", "AL", "mm")
    sheet.work("Cw", "width of the cornea", "-5.41 + 0.58412 * LC + 0.098 * K", "mm")
    _height(sheet)
    sheet.work("D", "depth of the lens by its constant", "0.62467 * A - 68.747", "mm")
    sheet.work("ELP", "position of the lens", "H + D - 3.336", "mm")
    sheet.work("L", "optical length", "AL + 0.65696 - 0.02029 * AL", "mm")
    sheet.fix("n", "0.333", "the cornea's index less one, by the formula")
    sheet.fix("V", "12", "mm from the spectacles to the cornea, by the formula")
    two_lens.sides(sheet)


def _height(sheet: Sheet) -> None:
    under = sheet.work("S", "under the root", "r^2 - Cw^2 / 4")
    if under >= 0:
        sheet.work("H", "height of the cornea", "r - sqrt(S)", "mm")
        return
    sheet.say("There is no root of a number below 0: the height is taken as the radius.")
    sheet.work("H", "height of the cornea", "r", "mm")
    sheet.remark(
        "SRK/T: this cornea is too steep for an eye of this length; the formula falls back on its "
        "radius and is outside its physiological range."
    )
