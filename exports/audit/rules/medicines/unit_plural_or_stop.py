"""Units take no plural and no full stop."""

from __future__ import annotations

from chamberwise.engine.checks.wording import unit_plural_or_stop
from chamberwise.exports.audit.rule import Mark
from chamberwise.exports.audit.wording import printed_rule

RULE = printed_rule("MED-14", unit_plural_or_stop.RULE, Mark.VERIFIED)
