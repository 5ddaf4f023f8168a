"""The three formulas side by side: where they part, none of them is sure."""

from __future__ import annotations

from decimal import Decimal

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import shown
from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.optics.by_formula import CAUTIONS, LIMITS, take_constant, take_eye
from chamberwise.engine.working.optics.formulas import FORMULAS
from chamberwise.engine.working.optics.inputs import (
    A_CONSTANT,
    AXIAL_LENGTH,
    EYES,
    KERATOMETRY,
    TARGET,
)
from chamberwise.engine.working.sheet import Sheet

WIDE = Decimal("0.5")
"""Dioptres of spread above which it is remarked on."""


def work(given: Given, sheet: Sheet) -> None:
    """Work each formula in turn, and how far they lie apart."""
    take_eye(given, sheet)
    powers = {}
    for formula in FORMULAS.values():
        sheet.head(formula.title)
        take_constant(given, sheet, formula)
        formula.position(sheet)
        powers[formula.name] = formula.power(sheet)
        sheet.conclude(formula.name, formula.title, powers[formula.name], "D", 2)
    sheet.head(_("Spread"))
    sheet.take("most", max(powers.values()))
    sheet.take("least", min(powers.values()))
    spread = sheet.work("d", _("between the strongest and the weakest"), "most - least", "D")
    sheet.conclude("spread", _("spread of the formulas"), spread, "D", 2)
    rows = [
        (FORMULAS[name].title, _("{power} D").format(power=shown(power, 2)))
        for name, power in powers.items()
    ]
    sheet.tabulate(_("Formulas side by side"), (N_("formula"), N_("power")), rows)
    if spread > WIDE:
        sheet.remark(
            _(
                "The formulas lie more than half a dioptre apart. That is known of short and "
                "long eyes; they are not averaged, and none is chosen here."
            )
        )


CALCULATION = Calculation(
    name="formula-spread",
    title=N_("Spread of the formulas"),
    purpose=N_("One eye by SRK/T, Holladay 1 and Hoffer Q, side by side."),
    inputs=(AXIAL_LENGTH, KERATOMETRY, A_CONSTANT, TARGET, *EYES),
    sources=(citations.SRK_T, citations.HOLLADAY_1, citations.HOFFER_Q, citations.CONSTANTS),
    limits=LIMITS,
    cautions=CAUTIONS,
    work=work,
)
