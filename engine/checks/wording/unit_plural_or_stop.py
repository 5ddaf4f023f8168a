"""The sign of a unit takes no plural s and no full stop, save at the end of a sentence."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_FAULT = re.compile(
    r"(?<![A-Za-z])(?:(?P<plural>mL|ml|mg|kg|mmHg|mmol|(?<=[0-9]\s)(?:mm|cm)|(?<=[0-9])(?:mm|cm))s(?!\w)"
    r"|(?:(?<=[0-9])|(?<=[0-9]\s))(?P<stopped>mmHg|mmol|mL|ml|mg|kg|mm|cm|g|L)\.(?=\s?[,;)/]|\s[a-z]))"
)


def _find(text: str) -> Iterator[Hit]:
    for found in _FAULT.finditer(text):
        unit = found.group("plural") or found.group("stopped")
        told = (
            _('"{found}" gives the unit a plural s')
            if found.group("plural")
            else _('"{found}" gives the unit a full stop')
        )
        message = told.format(found=found.group())
        yield Hit(found.start(), found.end(), message, _('write "{unit}"').format(unit=unit))


RULE = WordingRule(
    slug="unit-plural-or-stop",
    title=N_("Unit with a plural s or a full stop"),
    severity=Severity.WARNING,
    why=N_(
        "In small or poor print the stop after mg. can be read as a 1, and an added s as a figure."
    ),
    source=N_("list of high-risk prescription items, SI usage (secondary copies read)"),
    reads=EVERY_KIND,
    find=_find,
    wrong="Draw up 2 mLs of balanced salt solution.",
    right="Draw up 2 mL of balanced salt solution.",
)
