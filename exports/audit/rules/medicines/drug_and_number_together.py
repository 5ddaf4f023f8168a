"""The name of a drug and its dose stand apart."""

from __future__ import annotations

from chamberwise.engine.checks.wording import drug_and_number_together
from chamberwise.exports.audit.rule import Mark
from chamberwise.exports.audit.wording import printed_rule

RULE = printed_rule("MED-04", drug_and_number_together.RULE, Mark.VERIFIED)
