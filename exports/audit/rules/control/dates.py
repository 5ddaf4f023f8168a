"""Dates that nobody takes for another."""

from __future__ import annotations

from chamberwise.engine.checks.wording import day_month_digits
from chamberwise.exports.audit.rule import Mark
from chamberwise.exports.audit.wording import printed_rule
from chamberwise.exports.paper.sheet import Role

RULE = printed_rule("DOC-07", day_month_digits.RULE, Mark.COMMON_PRACTICE, tuple(Role))
