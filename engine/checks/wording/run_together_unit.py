"""A number and its unit stand apart.

Gauges ("25G"), suture sizes ("10-0") and names ("A4") are no quantities.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.quantity import SPACED_UNIT, UNIT_END
from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_JOINED = re.compile(
    rf"(?<![A-Za-z0-9.,])(?P<number>\.?[0-9][0-9.,]*+)(?P<unit>{SPACED_UNIT}{UNIT_END})"
)


def _find(text: str) -> Iterator[Hit]:
    for found in _JOINED.finditer(text):
        number, unit = found.group("number", "unit")
        message = _('"{found}" runs number and unit together').format(found=found.group())
        yield Hit(
            found.start(),
            found.end(),
            message,
            _('write "{number} {unit}"').format(number=number, unit=unit),
        )


RULE = WordingRule(
    slug="run-together-unit",
    title=N_("Number and unit run together"),
    severity=Severity.ERROR,
    why=N_(
        "The m of 10mg is taken for one or two noughts, and ten or a hundred times the "
        "dose is drawn up."
    ),
    source=N_("ISMP list of error-prone dose designations (secondary copy read); SI spacing"),
    reads=EVERY_KIND,
    find=_find,
    wrong="Give acetazolamide 500mg.",
    right="Give acetazolamide 500 mg.",
)
