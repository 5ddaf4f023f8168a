"""A decimal below one has a nought before its point."""

from __future__ import annotations

from chamberwise.engine.checks.wording import naked_decimal
from chamberwise.exports.audit.german import quantities
from chamberwise.exports.audit.rule import Mark
from chamberwise.exports.audit.wording import printed_rule

RULE = printed_rule("MED-02", naked_decimal.RULE, Mark.VERIFIED, german=quantities.naked_decimal)
