"""No negator in a question."""

from __future__ import annotations

from chamberwise.engine.checks.wording import negated_question
from chamberwise.exports.audit.german import negation
from chamberwise.exports.audit.rule import Mark
from chamberwise.exports.audit.wording import printed_rule
from chamberwise.exports.paper.sheet import Role

RULE = printed_rule(
    "LAN-08",
    negated_question.RULE,
    Mark.VERIFIED,
    (Role.QUESTION,),
    german=negation.negated_question,
)
