"""A number and its unit stand apart."""

from __future__ import annotations

from chamberwise.engine.checks.wording import run_together_unit
from chamberwise.exports.audit.german import quantities
from chamberwise.exports.audit.rule import Mark
from chamberwise.exports.audit.wording import printed_rule

RULE = printed_rule(
    "MED-03", run_together_unit.RULE, Mark.VERIFIED, german=quantities.run_together_unit
)
