"""Does it survive other eyes, other light, and a copier."""

from __future__ import annotations

from chamberwise.exports.audit.rule import Rule
from chamberwise.exports.audit.rules.colour import (
    black_on_dark,
    contrast,
    grey_print,
    how_many,
    lacking_vision,
    large_text,
    line_contrast,
    not_by_colour_alone,
    photocopy,
    signal_use,
    tinted_light,
    told_apart,
    words_on_signals,
)

__all__ = ["RULES"]

RULES: tuple[Rule, ...] = (
    contrast.RULE,
    large_text.RULE,
    line_contrast.RULE,
    not_by_colour_alone.RULE,
    told_apart.RULE,
    lacking_vision.RULE,
    grey_print.RULE,
    photocopy.RULE,
    how_many.RULE,
    signal_use.RULE,
    words_on_signals.RULE,
    black_on_dark.RULE,
    tinted_light.RULE,
)
