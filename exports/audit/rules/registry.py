"""Every rule of the audit, in the order in which it is reported."""

from __future__ import annotations

from chamberwise.exports.audit.rule import Rule
from chamberwise.exports.audit.rules import (
    colour,
    control,
    flow,
    language,
    legibility,
    medicines,
    printing,
    structure,
)

RULES: tuple[Rule, ...] = (
    *legibility.RULES,
    *structure.RULES,
    *flow.RULES,
    *colour.RULES,
    *language.RULES,
    *medicines.RULES,
    *printing.RULES,
    *control.RULES,
)
