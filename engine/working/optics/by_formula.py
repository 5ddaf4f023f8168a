"""A calculation of lens power by one formula; the three differ in the formula alone."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.form import Calculation, Input
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.optics.formulas import (
    FORMULAS,
    PowerFormula,
    constant_from_a,
)
from chamberwise.engine.working.optics.inputs import (
    A_CONSTANT,
    AXIAL_LENGTH,
    EYES,
    KERATOMETRY,
    STOCK,
    TARGET,
    same_eye,
)
from chamberwise.engine.working.optics.stocked import leave
from chamberwise.engine.working.refusal import refused
from chamberwise.engine.working.sheet import Sheet

SHORT, LONG = Decimal(22), Decimal(26)
"""Millimetres outside which the formulas drift apart."""

LIMITS = (
    N_(
        "It does not know an eye after refractive surgery, with a scarred or very "
        "irregular cornea, or with silicone oil."
    ),
    N_("It does not know the depth of the chamber, the other eye, or a toric lens."),
    N_(
        "It works for a lens in the bag. Another place needs another figure: "
        "`lens-to-sulcus`, `anterior-chamber-lens`."
    ),
)
CAUTIONS = (
    N_("A figure of the eye's own biometry, worked by its device, goes before this one."),
    N_("After a change of plan, lens model, power and eye are checked aloud anew."),
)


def power_calculation(name: str, title: str, own: Input | None = None) -> Calculation:
    """Return the calculation of a formula; `own` is its lens constant where that is not A."""
    formula = FORMULAS[name]
    constants = (A_CONSTANT,) if own is None else (own, replace(A_CONSTANT, required=False))

    def work(given: Given, sheet: Sheet) -> None:
        take_eye(given, sheet)
        take_constant(given, sheet, formula, own)
        formula.position(sheet)
        exact = formula.power(sheet)
        sheet.conclude("power", _("exact power for the bag"), exact, "D", 2)
        leave(sheet, exact, given.numbers("stock"), formula.refraction)

    return Calculation(
        name=name,
        title=title,
        purpose=N_("The power that leaves the refraction aimed at, and what stocked powers leave."),
        inputs=(AXIAL_LENGTH, KERATOMETRY, *constants, TARGET, STOCK, *EYES),
        sources=(formula.source, *(() if own is None else (citations.CONSTANTS,))),
        limits=LIMITS,
        cautions=CAUTIONS,
        work=work,
        shown=("a-constant",),
    )


def take_eye(given: Given, sheet: Sheet) -> None:
    """Put length, cornea and target on the sheet. Raises `RefusedError` for the other eye."""
    same_eye(given, sheet)
    sheet.take("AL", given.number("axial-length"))
    sheet.take("K", given.number("keratometry"))
    sheet.take("Rx", given.number("target"))
    if not SHORT <= sheet["AL"] <= LONG:
        sheet.remark(
            _(
                "The eye is short or long (usual: 22 to 26 mm): the formulas may differ by "
                "more than half a dioptre. `formula-spread` shows them side by side; they are "
                "not averaged."
            )
        )


def take_constant(
    given: Given, sheet: Sheet, formula: PowerFormula, own: Input | None = None
) -> None:
    """Put the formula's constant on the sheet. Raises `RefusedError` for none, and for two."""
    if own is None:
        sheet.take("A", given.number("a-constant"))
        constant_from_a(sheet, formula)
    elif (own.name in given) == ("a-constant" in given):
        what = (
            _("`{constant}` and `A` are both given")
            if own.name in given
            else _("`{constant}` and `A` are neither of them given")
        )
        raise refused(
            own.name,
            what.format(constant=own.symbol),
            _("The formula takes one constant, {constant}.").format(constant=own.symbol),
            _("Give `{constant}`, or `A` from which it is then worked approximately.").format(
                constant=own.symbol
            ),
        )
    elif own.name in given:
        sheet.take(own.symbol, given.number(own.name))
    else:
        sheet.take("A", given.number("a-constant"))
        constant_from_a(sheet, formula)
