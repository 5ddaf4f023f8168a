"""Micrograms have no sign."""

from __future__ import annotations

from chamberwise.engine.checks.wording import microgram_sign
from chamberwise.exports.audit.german import quantities
from chamberwise.exports.audit.rule import Mark
from chamberwise.exports.audit.wording import printed_rule

RULE = printed_rule("MED-05", microgram_sign.RULE, Mark.VERIFIED, german=quantities.microgram_sign)
