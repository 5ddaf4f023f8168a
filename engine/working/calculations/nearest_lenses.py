"""What each lens on the shelf would leave, nearest to the aim first."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain, pointed, shown
from chamberwise.engine.working.form import Calculation, Input, Kind
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.optics.by_formula import CAUTIONS, LIMITS, take_constant, take_eye
from chamberwise.engine.working.optics.formulas import FORMULAS
from chamberwise.engine.working.optics.inputs import (
    A_CONSTANT,
    AXIAL_LENGTH,
    EYES,
    KERATOMETRY,
    STOCK,
    TARGET,
)
from chamberwise.engine.working.sheet import Sheet

MOST = 4
"""Lenses shown: the nearest."""

FORMULA = Input(
    name="formula",
    meaning=N_("the formula to work by"),
    example="srk-t",
    kind=Kind.WORD,
    words=tuple(FORMULAS),
)


def work(given: Given, sheet: Sheet) -> None:
    """Work the exact power, then the refraction of the lenses nearest to it."""
    take_eye(given, sheet)
    formula = FORMULAS[given.word("formula")]
    take_constant(given, sheet, formula)
    aim = given.number("target")
    formula.position(sheet)
    exact = formula.power(sheet)
    sheet.conclude("power", _("exact power for the bag"), exact, "D", 2)
    rows = []
    for lens in _nearest(exact, given.numbers("stock")):
        sheet.head(_("What a lens of {lens} D leaves").format(lens=plain(lens)))
        sheet.take("P", lens)
        left = formula.refraction(sheet)
        sheet.conclude(
            f"{pointed(lens)}-leaves",
            _("{lens} D leaves").format(lens=plain(lens)),
            left,
            "D",
            2,
            sign=True,
        )
        rows.append((_("{lens} D").format(lens=plain(lens)), _signed(left), _signed(left - aim)))
    sheet.tabulate(_("Lenses on the shelf"), (N_("lens"), N_("leaves"), N_("against aim")), rows)
    sheet.remark(_("Which lens is chosen is the team's own policy; none is chosen here."))


def _signed(refraction: Decimal) -> str:
    return _("{refraction} D").format(refraction=shown(refraction, 2, sign=True))


def _nearest(exact: Decimal, stock: tuple[Decimal, ...]) -> list[Decimal]:
    """Return the few powers nearest to the exact one, weakest first."""
    near = sorted(dict.fromkeys(stock), key=lambda power: (abs(power - exact), power))
    return sorted(near[:MOST])


CALCULATION = Calculation(
    name="nearest-lenses",
    title=N_("Refraction left by the nearest stocked lenses"),
    purpose=N_("The lenses on the shelf nearest to the exact power, and what each leaves."),
    inputs=(
        FORMULA,
        AXIAL_LENGTH,
        KERATOMETRY,
        A_CONSTANT,
        TARGET,
        replace(STOCK, required=True, meaning=N_("powers on the shelf, blanks between them")),
        *EYES,
    ),
    sources=(citations.SRK_T, citations.HOLLADAY_1, citations.HOFFER_Q, citations.CONSTANTS),
    limits=LIMITS,
    cautions=CAUTIONS,
    work=work,
)
