"""A strength written as a ratio comes with its mg per mL.

Dilutions such as 1:10, and frequencies ("1 in 1,000 operations"), are no strengths.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal

from chamberwise.engine.checks.wording.quantity import gives_strength, plainly
from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_RATIO = re.compile(
    r"(?<![\w.,:/-])1(?:\s?:\s?|\sin\s)(?P<parts>[0-9]{1,3}(?:,[0-9]{3}){1,3}|[0-9]{3,9})(?![\w:]|[.,][0-9])"
    r"(?!\s(?:[a-z-]+\s){0,2}(?:patients|people|eyes|cases|operations|procedures|injections|lenses"
    r"|surgeons|blocks|times|adults|children|units|hospitals|cataracts)\b)"
)


def _find(text: str) -> Iterator[Hit]:
    if gives_strength(text):
        return
    for found in _RATIO.finditer(text):
        parts = int(found.group("parts").replace(",", ""))
        if parts:
            strength = plainly(round(Decimal(1000) / parts, 6))
            message = _('"{found}" gives no mg per mL').format(found=found.group())
            advice = _('write "{strength} mg per mL" as the label gives it').format(
                strength=strength
            )
            yield Hit(found.start(), found.end(), message, advice)


RULE = WordingRule(
    slug="ratio-strength",
    title=N_("Strength as a ratio"),
    severity=Severity.ERROR,
    why=N_(
        "1:1,000 and 1:10,000 differ by one nought and by ten times the dose; taking "
        "one for the other can stop a heart."
    ),
    source=N_("US labelling rule of 2016 against ratio strengths (from memory)"),
    reads=EVERY_KIND,
    find=_find,
    wrong="Draw up 0.5 mL of adrenaline 1:1000.",
    right="Draw up 0.5 mL of adrenaline 1 mg per mL (1:1,000).",
)
