"""Is it said so that it is understood at once."""

from __future__ import annotations

from chamberwise.exports.audit.rule import Rule
from chamberwise.exports.audit.rules.language import (
    caution_length,
    double_negative,
    instruction_length,
    negated_question,
)

__all__ = ["RULES"]

RULES: tuple[Rule, ...] = (
    instruction_length.RULE,
    caution_length.RULE,
    double_negative.RULE,
    negated_question.RULE,
)
