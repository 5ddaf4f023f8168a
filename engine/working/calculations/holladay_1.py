"""Lens power by Holladay 1."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.working.form import Input, between
from chamberwise.engine.working.optics.by_formula import power_calculation

CALCULATION = power_calculation(
    "holladay-1",
    N_("Lens power by Holladay 1"),
    Input(
        name="surgeon-factor",
        symbol="SF",
        meaning=N_("from the iris to the lens, the lens's constant in this formula"),
        example="1.62 mm",
        unit="mm",
        hard=between("-4", "4"),
        soft=between("0", "2.5"),
        outside=N_("It is no A-constant: that one goes in as `A`."),
        required=False,
    ),
)
