"""Can it be read from where it is read."""

from __future__ import annotations

from chamberwise.exports.audit.rule import Rule
from chamberwise.exports.audit.rules.legibility import (
    acuity,
    alignment,
    capitals,
    dim_light,
    emphasis,
    glyphs,
    greatest_angle,
    hand_height,
    heading_height,
    italics,
    least_angle,
    line_length,
    line_pitch,
    preferred_angle,
    printed_distance,
    reference_text,
    stroke_width,
    typefaces,
)

__all__ = ["RULES"]

RULES: tuple[Rule, ...] = (
    least_angle.RULE,
    preferred_angle.RULE,
    heading_height.RULE,
    greatest_angle.RULE,
    hand_height.RULE,
    reference_text.RULE,
    acuity.RULE,
    dim_light.RULE,
    stroke_width.RULE,
    printed_distance.RULE,
    line_pitch.RULE,
    line_length.RULE,
    alignment.RULE,
    typefaces.RULE,
    capitals.RULE,
    italics.RULE,
    emphasis.RULE,
    glyphs.RULE,
)
