"""Does the sheet say which it is, who stands for it and until when."""

from __future__ import annotations

from chamberwise.exports.audit.rule import Rule
from chamberwise.exports.audit.rules.control import (
    dates,
    draft_mark,
    expired_mark,
    footer,
    review_span,
    template_mark,
    translation_mark,
    uncontrolled_copy,
)

__all__ = ["RULES"]

RULES: tuple[Rule, ...] = (
    footer.RULE,
    uncontrolled_copy.RULE,
    review_span.RULE,
    expired_mark.RULE,
    draft_mark.RULE,
    dates.RULE,
    template_mark.RULE,
    translation_mark.RULE,
)
