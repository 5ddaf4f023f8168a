"""Right eye, left eye, both eyes."""

from __future__ import annotations

from chamberwise.engine.checks.wording import eye_abbreviation
from chamberwise.exports.audit.rule import Mark
from chamberwise.exports.audit.wording import printed_rule

RULE = printed_rule("MED-08", eye_abbreviation.RULE, Mark.VERIFIED)
