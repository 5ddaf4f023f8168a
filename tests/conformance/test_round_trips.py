"""Forward and back is where one began; held against scipy, which knows no closed form."""

from __future__ import annotations

from decimal import Decimal

import pytest
from chamberwise.engine.working.optics import vergence
from chamberwise.engine.working.optics.formulas import FORMULAS, constant_from_a
from chamberwise.engine.working.sheet import Sheet
from hypothesis import assume, given
from hypothesis import strategies as some
from scipy.optimize import brentq

from tests.conformance.working_out import eye

CLOSE = Decimal("0.000001")


def between(low: str, high: str) -> some.SearchStrategy[str]:
    return some.decimals(low, high, places=2, allow_nan=False).map(str)


lengths, corneas = between("20", "30"), between("39", "47")
refractions, constants = between("-3", "1"), between("117", "119.5")


def placed(formula: str, length: str, cornea: str, constant: str, refraction: str) -> Sheet:
    sheet = eye(length, cornea, refraction, A=constant)
    constant_from_a(sheet, FORMULAS[formula])
    FORMULAS[formula].position(sheet)
    return sheet


@pytest.mark.parametrize("formula", FORMULAS)
@given(lengths, corneas, constants, refractions)
def test_a_formula_turns_back(
    formula: str, length: str, cornea: str, constant: str, refraction: str
) -> None:
    sheet = placed(formula, length, cornea, constant, refraction)
    FORMULAS[formula].power(sheet)
    assert abs(FORMULAS[formula].refraction(sheet) - Decimal(refraction)) < CLOSE


@given(lengths, corneas, between("4", "6"), refractions, between("10", "15"))
def test_vergence_turns_back(
    length: str, cornea: str, position: str, refraction: str, vertex: str
) -> None:
    sheet = eye(length, cornea, refraction, ELP=position, V=vertex)
    vergence.power(sheet)
    assert abs(vergence.refraction(sheet) - Decimal(refraction)) < Decimal("1e-9")


@pytest.mark.parametrize("formula", FORMULAS)
@pytest.mark.parametrize(("length", "cornea"), [("21", "45"), ("23.5", "43.5"), ("27", "42")])
def test_the_refraction_is_the_root_that_scipy_finds(
    formula: str, length: str, cornea: str
) -> None:
    def missing(refraction: float) -> float:
        sheet = placed(formula, length, cornea, "118.7", repr(refraction))
        return float(FORMULAS[formula].power(sheet)) - 20

    root = brentq(missing, -15, 12, xtol=1e-12)
    sheet = placed(formula, length, cornea, "118.7", "0")
    sheet.take("P", "20")
    assert abs(float(FORMULAS[formula].refraction(sheet)) - root) < 1e-6


@pytest.mark.parametrize("formula", FORMULAS)
@given(lengths, corneas, refractions)
def test_more_power_never_leaves_less_short_sight(
    formula: str, length: str, cornea: str, refraction: str
) -> None:
    sheet = placed(formula, length, cornea, "118.7", refraction)
    power = FORMULAS[formula].power(sheet)
    assume(-10 < power < 45)
    sheet.take("P", power + Decimal("0.5"))
    assert FORMULAS[formula].refraction(sheet) < Decimal(refraction)
