"""Lens power by Hoffer Q."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.working.form import Input, between
from chamberwise.engine.working.optics.by_formula import power_calculation

CALCULATION = power_calculation(
    "hoffer-q",
    N_("Lens power by Hoffer Q"),
    Input(
        name="chamber-depth-constant",
        symbol="pACD",
        meaning=N_("the lens's own chamber depth, its constant in this formula"),
        example="5.37 mm",
        unit="mm",
        hard=between("2", "7"),
        soft=between("3", "6.5"),
        outside=N_("It is no A-constant: that one goes in as `A`."),
        required=False,
    ),
)
