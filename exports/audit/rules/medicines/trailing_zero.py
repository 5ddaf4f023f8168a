"""A whole dose has no decimal point."""

from __future__ import annotations

from chamberwise.engine.checks.wording import trailing_zero
from chamberwise.exports.audit.german import quantities
from chamberwise.exports.audit.rule import Mark
from chamberwise.exports.audit.wording import printed_rule

RULE = printed_rule("MED-01", trailing_zero.RULE, Mark.VERIFIED, german=quantities.trailing_zero)
