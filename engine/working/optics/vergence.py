"""Thin lenses one behind the other: light is followed from the spectacles to the retina.

Symbols on the sheet: AL, ELP and V in mm, K, P and Rx in dioptres.
"""

from __future__ import annotations

from decimal import Decimal

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.refusal import refused
from chamberwise.engine.working.sheet import Sheet

LEAST_BEHIND = Decimal(8)
"""Millimetres that the retina lies behind the lens at least."""


def power(sheet: Sheet) -> Decimal:
    """Work the power `P` that leaves the refraction `Rx`. Raises `RefusedError`."""
    _behind(sheet)
    at_cornea(sheet)
    arriving(sheet)
    return sheet.work("P", _("power of the lens"), "1336 / (AL - ELP) - W", "D")


def at_cornea(sheet: Sheet) -> None:
    """Work the refraction at the cornea, and the vergence just behind it."""
    sheet.work("Rc", _("refraction at the cornea"), "Rx / (1 - V * Rx / 1000)", "D")
    sheet.work("z", _("vergence behind the cornea"), "K + Rc", "D")


def arriving(sheet: Sheet) -> None:
    """Work the vergence that arrives at the lens."""
    sheet.work("W", _("vergence at the lens"), "1336 / (1336 / z - ELP)", "D")
    if not sheet["z"] > 0 or not sheet["W"] > 0:
        raise refused(
            "lens-position",
            _("the light would meet before the lens"),
            _("No lens there can be worked."),
            _("Look at `K`, the target and the lens position again."),
        )


def refraction(sheet: Sheet) -> Decimal:
    """Work the refraction `Rx` that the power `P` leaves. Raises `RefusedError`."""
    _behind(sheet)
    sheet.work("u", _("vergence needed in front of the lens"), "1336 / (AL - ELP) - P", "D")
    sheet.work("z", _("vergence behind the cornea"), "1336 / (1336 / u + ELP)", "D")
    return at_spectacles(sheet)


def at_spectacles(sheet: Sheet) -> Decimal:
    """Work the refraction at the spectacles from the vergence behind the cornea."""
    sheet.work("Rc", _("refraction at the cornea"), "z - K", "D")
    return sheet.work("Rx", _("refraction at the spectacles"), "Rc / (1 + V * Rc / 1000)", "D")


def _behind(sheet: Sheet) -> None:
    if not sheet["AL"] > sheet["ELP"] + LEAST_BEHIND:
        raise refused(
            "axial-length",
            _("the lens would lie at the retina"),
            _("The eye is at least {least_behind} mm longer than its lens is deep.").format(
                least_behind=LEAST_BEHIND
            ),
            _("Look at the length of the eye and the lens position again."),
        )
