"""A strength as a ratio comes with its mg per mL."""

from __future__ import annotations

from chamberwise.engine.checks.wording import ratio_strength
from chamberwise.exports.audit.german import quantities
from chamberwise.exports.audit.rule import Mark
from chamberwise.exports.audit.wording import printed_rule

RULE = printed_rule("MED-17", ratio_strength.RULE, Mark.MEMORY, german=quantities.ratio_strength)
