"""Is the flow drawn so that the eye can follow it."""

from __future__ import annotations

from chamberwise.exports.audit.rule import Rule
from chamberwise.exports.audit.rules.flow import (
    answers,
    arrow_heads,
    arrows_at_a_box,
    bends,
    boxes_on_a_page,
    crossing_angle,
    crossings,
    decision_exits,
    decisions_in_a_row,
    direction,
    drawn_as_placed,
    ink_budget,
    no_overlaps,
    room_in_the_box,
    shapes,
    yes_and_no,
)

__all__ = ["RULES"]

RULES: tuple[Rule, ...] = (
    shapes.RULE,
    decision_exits.RULE,
    answers.RULE,
    yes_and_no.RULE,
    boxes_on_a_page.RULE,
    crossings.RULE,
    crossing_angle.RULE,
    bends.RULE,
    no_overlaps.RULE,
    direction.RULE,
    decisions_in_a_row.RULE,
    arrows_at_a_box.RULE,
    room_in_the_box.RULE,
    arrow_heads.RULE,
    ink_budget.RULE,
    drawn_as_placed.RULE,
)
