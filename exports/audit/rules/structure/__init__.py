"""Is it made as an emergency checklist is made."""

from __future__ import annotations

from chamberwise.exports.audit.rule import Rule
from chamberwise.exports.audit.rules.structure import (
    continuation,
    first_actions,
    items_in_a_block,
    local_protocol,
    no_split,
)

__all__ = ["RULES"]

RULES: tuple[Rule, ...] = (
    first_actions.RULE,
    items_in_a_block.RULE,
    continuation.RULE,
    no_split.RULE,
    local_protocol.RULE,
)
