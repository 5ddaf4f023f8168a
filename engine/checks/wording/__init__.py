"""The rules on wording, in the order in which they are listed and reported.

First what is to be done, then how it is said, then doses, sides, times and dates.
"""

from __future__ import annotations

from chamberwise.engine.checks.wording import (
    act_left_open,
    ambiguous_word,
    cc_for_millilitre,
    daily_abbreviation,
    day_month_digits,
    dose_arithmetic,
    dose_symbol,
    double_negative,
    drug_and_number_together,
    eye_abbreviation,
    mass_abbreviation,
    microgram_sign,
    naked_decimal,
    negated_question,
    percentage_without_concentration,
    ratio_strength,
    run_together_unit,
    sentence_too_long,
    several_instructions,
    starts_without_verb,
    too_many_words,
    trailing_zero,
    ungrouped_thousands,
    unit_abbreviation,
    unit_plural_or_stop,
    unpaired_prohibition,
)
from chamberwise.engine.checks.wording.rule import WordingRule

__all__ = ["RULES"]

RULES: tuple[WordingRule, ...] = (
    several_instructions.RULE,
    starts_without_verb.RULE,
    unpaired_prohibition.RULE,
    act_left_open.RULE,
    ambiguous_word.RULE,
    double_negative.RULE,
    negated_question.RULE,
    too_many_words.RULE,
    sentence_too_long.RULE,
    trailing_zero.RULE,
    naked_decimal.RULE,
    run_together_unit.RULE,
    drug_and_number_together.RULE,
    ungrouped_thousands.RULE,
    unit_plural_or_stop.RULE,
    microgram_sign.RULE,
    mass_abbreviation.RULE,
    unit_abbreviation.RULE,
    cc_for_millilitre.RULE,
    ratio_strength.RULE,
    percentage_without_concentration.RULE,
    dose_symbol.RULE,
    dose_arithmetic.RULE,
    eye_abbreviation.RULE,
    daily_abbreviation.RULE,
    day_month_digits.RULE,
)
