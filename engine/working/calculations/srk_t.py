"""Lens power by SRK/T."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.working.optics.by_formula import power_calculation

CALCULATION = power_calculation("srk-t", N_("Lens power by SRK/T"))
