"""Can a dose be misread as it was printed."""

from __future__ import annotations

from chamberwise.exports.audit.rule import Rule
from chamberwise.exports.audit.rules.medicines import (
    cc_for_millilitre,
    daily_abbreviation,
    drug_and_number_together,
    eye_abbreviation,
    mass_abbreviation,
    microgram_sign,
    naked_decimal,
    ratio_strength,
    run_together_unit,
    split_quantity,
    trailing_zero,
    unit_abbreviation,
    unit_plural_or_stop,
)

__all__ = ["RULES"]

RULES: tuple[Rule, ...] = (
    trailing_zero.RULE,
    naked_decimal.RULE,
    run_together_unit.RULE,
    drug_and_number_together.RULE,
    microgram_sign.RULE,
    mass_abbreviation.RULE,
    unit_abbreviation.RULE,
    eye_abbreviation.RULE,
    daily_abbreviation.RULE,
    cc_for_millilitre.RULE,
    unit_plural_or_stop.RULE,
    ratio_strength.RULE,
    split_quantity.RULE,
)
