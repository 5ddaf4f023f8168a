"""The three formulas of lens power, each with its constant and how to turn it either way."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.words import Source
from chamberwise.engine.working import citations
from chamberwise.engine.working.optics import (
    hoffer_q,
    holladay_1,
    srk_t,
    two_lens,
    vergence,
)
from chamberwise.engine.working.sheet import Sheet


@dataclass(frozen=True, slots=True)
class PowerFormula:
    """Where a formula puts the lens, and its equation solved for the power and the refraction.

    `constant` is the symbol of its lens constant, `from_a` how that follows from the A-constant.
    """

    name: str
    title: str
    constant: str
    from_a: str
    position: Callable[[Sheet], None]
    power: Callable[[Sheet], Decimal]
    refraction: Callable[[Sheet], Decimal]
    source: Source


FORMULAS = {
    each.name: each
    for each in (
        PowerFormula(
            "srk-t",
            "SRK/T",
            "A",
            "A",
            srk_t.position,
            two_lens.power,
            two_lens.refraction,
            citations.SRK_T,
        ),
        PowerFormula(
            "holladay-1",
            "Holladay 1",
            "SF",
            "0.5663 * A - 65.6",
            holladay_1.position,
            two_lens.power,
            two_lens.refraction,
            citations.HOLLADAY_1,
        ),
        PowerFormula(
            "hoffer-q",
            "Hoffer Q",
            "pACD",
            "0.58357 * A - 63.896",
            hoffer_q.position,
            vergence.power,
            vergence.refraction,
            citations.HOFFER_Q,
        ),
    )
}


def constant_from_a(sheet: Sheet, formula: PowerFormula) -> None:
    """Work a formula's constant from the A-constant, if it has one of its own."""
    if formula.constant != "A":
        sheet.work(formula.constant, _("constant, from A"), formula.from_a)
        sheet.remark(
            _(
                "{formula}: its constant was worked from the A-constant; that is approximate, "
                "and one optimised for the unit is better."
            ).format(formula=formula.title)
        )
