"""A decimal below one has a nought before its point."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.quantity import SPACED_UNIT, UNIT_END
from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_NAKED = re.compile(
    rf"(?<![\w.,])(?P<number>\.[0-9]++)(?:\s?(?P<unit>(?:{SPACED_UNIT}|%){UNIT_END}))?"
)


def _find(text: str) -> Iterator[Hit]:
    for found in _NAKED.finditer(text):
        written = f"0{found.group('number')} {found.group('unit') or ''}".strip()
        message = _('"{found}" has no nought before the point').format(found=found.group())
        yield Hit(
            found.start(), found.end(), message, _('write "{written}"').format(written=written)
        )


RULE = WordingRule(
    slug="naked-decimal",
    title=N_("Decimal without a leading nought"),
    severity=Severity.ERROR,
    why=N_("When the point is not seen, .5 mL is read as 5 mL: ten times the dose."),
    source=N_("ISMP list of error-prone dose designations (secondary copy read)"),
    reads=EVERY_KIND,
    find=_find,
    wrong="Inject .1 mL of triamcinolone.",
    right="Inject 0.1 mL of triamcinolone.",
)
