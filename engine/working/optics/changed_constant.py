"""One eye by SRK/T with one lens constant and with another, and the shortcut beside that."""

from __future__ import annotations

from decimal import Decimal

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.optics.by_formula import take_eye
from chamberwise.engine.working.optics.formulas import FORMULAS
from chamberwise.engine.working.optics.inputs import same_eye
from chamberwise.engine.working.refusal import refused
from chamberwise.engine.working.sheet import Sheet


def power_with(sheet: Sheet, constant: Decimal) -> Decimal:
    """Work the power of the eye on the sheet with an A-constant."""
    formula = FORMULAS["srk-t"]
    sheet.take("A", constant)
    formula.position(sheet)
    return formula.power(sheet)


def take_eye_if_known(given: Given, sheet: Sheet) -> bool:
    """Put the eye on the sheet where both its figures are known. Raises `RefusedError` for one."""
    both = ("axial-length", "keratometry")
    found = [name for name in both if name in given]
    if len(found) == 1:
        missing = next(name for name in both if name not in found)
        raise refused(
            missing,
            _("`{found}` without `{missing}`").format(found=found[0], missing=missing),
            _("The eye is worked from both, or from neither by the shortcut."),
            _("Add `{missing}`, or leave `{found}` out.").format(missing=missing, found=found[0]),
        )
    if found:
        take_eye(given, sheet)
    else:
        same_eye(given, sheet)
    return bool(found)


def shortcut(sheet: Sheet, known: bool) -> Decimal:
    """Work the power by the difference of constants `A1` and `A2`, and its error if `Pn` is known.

    `Pp` is the planned power.
    """
    sheet.head(_("Shortcut: difference of the constants"))
    short = sheet.work("Pd", _("power by the shortcut"), "Pp + A2 - A1", "D", 2)
    if known:
        error = sheet.work("e", _("error of the shortcut"), "Pd - Pn", "D")
        sheet.conclude("shortcut-error", _("error of the shortcut"), error, "D", 2, sign=True)
    else:
        sheet.remark(
            _(
                "Without length and cornea only the shortcut is left. It is exact for an old "
                "regression formula alone; in short and long eyes it misses by up to half a "
                "dioptre."
            )
        )
    sheet.conclude("shortcut", _("power by the shortcut (fallback)"), short, "D", 2)
    return short
