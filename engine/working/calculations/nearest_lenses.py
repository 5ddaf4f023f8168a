"""What each lens on the shelf would leave, nearest to the aim first."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain, shown
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
    meaning="the formula to work by",
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
    sheet.conclude("power", "exact power for the bag", exact, "D", 2)
    rows = []
    for lens in _nearest(exact, given.numbers("stock")):
        sheet.head(f"What a lens of {plain(lens)} D leaves")
        sheet.take("P", lens)
        left = formula.refraction(sheet)
        sheet.conclude(f"{plain(lens)}-leaves", f"{plain(lens)} D leaves", left, "D", 2, sign=True)
        rows.append((f"{plain(lens)} D", _signed(left), _signed(left - aim)))
    sheet.tabulate("Lenses on the shelf", ("lens", "leaves", "against aim"), rows)
    sheet.remark("Which lens is chosen is the team's own policy; none is chosen here.")


def _signed(refraction: Decimal) -> str:
    return f"{shown(refraction, 2, sign=True)} D"


def _nearest(exact: Decimal, stock: tuple[Decimal, ...]) -> list[Decimal]:
    """Return the few powers nearest to the exact one, weakest first."""
    near = sorted(dict.fromkeys(stock), key=lambda power: (abs(power - exact), power))
    return sorted(near[:MOST])


CALCULATION = Calculation(
    name="nearest-lenses",
    title="Refraction left by the nearest stocked lenses",
    purpose="The lenses on the shelf nearest to the exact power, and what each leaves.",
    inputs=(
        FORMULA,
        AXIAL_LENGTH,
        KERATOMETRY,
        A_CONSTANT,
        TARGET,
        replace(STOCK, required=True, meaning="powers on the shelf, blanks between them"),
        *EYES,
    ),
    sources=(citations.SRK_T, citations.HOLLADAY_1, citations.HOFFER_Q, citations.CONSTANTS),
    limits=LIMITS,
    cautions=CAUTIONS,
    work=work,
)
