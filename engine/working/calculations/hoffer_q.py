"""Lens power by Hoffer Q."""

from __future__ import annotations

from chamberwise.engine.working.form import Input, between
from chamberwise.engine.working.optics.by_formula import power_calculation

CALCULATION = power_calculation(
    "hoffer-q",
    Input(
        name="chamber-depth-constant",
        symbol="pACD",
        meaning="the lens's own chamber depth, its constant in this formula",
        example="5.37 mm",
        unit="mm",
        hard=between("2", "7"),
        soft=between("3", "6.5"),
        outside="It is no A-constant: that one goes in as `A`.",
        required=False,
    ),
)
