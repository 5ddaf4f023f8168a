"""The power equation that SRK/T and Holladay 1 share, solved for the lens and for the refraction.

Symbols on the sheet: r, L (optical length), ELP and V in mm, n (the cornea's index less one),
P and Rx in dioptres.
"""

from __future__ import annotations

from decimal import Decimal

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.sheet import Sheet


def sides(sheet: Sheet) -> None:
    """Work what the power and the refraction have in common, once the lens's place is known."""
    sheet.work("X", _("of the whole eye"), "1.336 * r - n * L")
    sheet.work("Y", _("up to the lens"), "1.336 * r - n * ELP")


def power(sheet: Sheet) -> Decimal:
    """Work the power `P` that leaves the refraction `Rx`."""
    sheet.work("T", _("upper side"), "X - 0.001 * Rx * (V * X + L * r)")
    sheet.work("B", _("lower side"), "Y - 0.001 * Rx * (V * Y + ELP * r)")
    return sheet.work("P", _("power of the lens"), "1336 * T / ((L - ELP) * B)", "D")


def refraction(sheet: Sheet) -> Decimal:
    """Work the refraction `Rx` that the power `P` leaves."""
    sheet.work("T", _("upper side"), "1336 * X - P * (L - ELP) * Y")
    sheet.work(
        "B",
        _("lower side"),
        "1.336 * (V * X + L * r) - 0.001 * P * (L - ELP) * (V * Y + ELP * r)",
    )
    return sheet.work("Rx", _("refraction at the spectacles"), "T / B", "D")
