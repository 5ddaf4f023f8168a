"""Micrograms and nanograms are written in full."""

from __future__ import annotations

from chamberwise.engine.checks.wording import mass_abbreviation
from chamberwise.exports.audit.rule import Mark
from chamberwise.exports.audit.wording import printed_rule

RULE = printed_rule("MED-06", mass_abbreviation.RULE, Mark.VERIFIED)
