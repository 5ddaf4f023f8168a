"""Units are written in full."""

from __future__ import annotations

from chamberwise.engine.checks.wording import unit_abbreviation
from chamberwise.exports.audit.german import quantities
from chamberwise.exports.audit.rule import Mark
from chamberwise.exports.audit.wording import printed_rule

RULE = printed_rule(
    "MED-07", unit_abbreviation.RULE, Mark.VERIFIED, german=quantities.unit_abbreviation
)
