"""A whole dose carries no decimal point and no trailing zero.

Lengths and lens powers keep theirs ("6.0 mm", "+21.0 D"): they are sizes, not doses.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.quantity import DOSE_UNIT, NUMBER_START, UNIT_END
from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_UNIT = rf"(?:{DOSE_UNIT}|%){UNIT_END}"
_DECIMAL = re.compile(
    rf"{NUMBER_START}(?P<whole>[0-9][0-9,]*+)\.(?P<part>[0-9]++)"
    rf"(?:\s?(?P<unit>{_UNIT})|(?=\s?(?:to|-|–)\s?[0-9][0-9.,]*+\s?{_UNIT}))"
)


def _find(text: str) -> Iterator[Hit]:
    for found in _DECIMAL.finditer(text):
        part = found.group("part")
        if part.endswith("0"):
            kept = part.rstrip("0")
            number = found.group("whole") + ("." + kept if kept else "")
            written = f"{number} {found.group('unit') or ''}".strip()
            message = _('"{found}" has a trailing zero').format(found=found.group())
            yield Hit(
                found.start(), found.end(), message, _('write "{written}"').format(written=written)
            )


RULE = WordingRule(
    slug="trailing-zero",
    title=N_("Trailing zero in a dose"),
    severity=Severity.ERROR,
    why=N_("When the point is not seen, 5.0 mg is read as 50 mg: ten times the dose."),
    source=N_("ISMP list of error-prone dose designations (secondary copy read)"),
    reads=EVERY_KIND,
    find=_find,
    wrong="Inject 1.0 mg of cefuroxime into the chamber.",
    right="Inject 1 mg of cefuroxime into the chamber.",
)
