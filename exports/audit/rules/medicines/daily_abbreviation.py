"""How often is said in words."""

from __future__ import annotations

from chamberwise.engine.checks.wording import daily_abbreviation
from chamberwise.exports.audit.rule import Mark
from chamberwise.exports.audit.wording import printed_rule

RULE = printed_rule("MED-09", daily_abbreviation.RULE, Mark.VERIFIED)
