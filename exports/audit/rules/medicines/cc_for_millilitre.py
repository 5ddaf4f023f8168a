"""Volumes are in mL."""

from __future__ import annotations

from chamberwise.engine.checks.wording import cc_for_millilitre
from chamberwise.exports.audit.german import quantities
from chamberwise.exports.audit.rule import Mark
from chamberwise.exports.audit.wording import printed_rule

RULE = printed_rule(
    "MED-10", cc_for_millilitre.RULE, Mark.VERIFIED, german=quantities.cubic_centimetre
)
