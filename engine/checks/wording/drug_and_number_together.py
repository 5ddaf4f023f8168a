"""The name of a drug and its dose stand apart."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.quantity import DOSE_UNIT, UNIT_END
from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_JOINED = re.compile(
    rf"(?<=[A-Za-z]{{3}})(?P<number>[0-9][0-9.,]*+)\s?(?P<unit>(?:{DOSE_UNIT}|%){UNIT_END})"
)
_GAS = re.compile(r"(?:O2|N2O)$")


def _find(text: str) -> Iterator[Hit]:
    for found in _JOINED.finditer(text):
        start = _word_start(text, found.start())
        name = text[start : found.start()]
        number, unit = found.group("number", "unit")
        if _GAS.search(name[-3:] + number):
            continue
        message = _('"{found}" runs name and dose together').format(found=text[start : found.end()])
        yield Hit(
            start,
            found.end(),
            message,
            _('write "{name} {number} {unit}"').format(name=name, number=number, unit=unit),
        )


def _word_start(text: str, end: int) -> int:
    start = end
    while start > 0 and text[start - 1].isalpha():
        start -= 1
    return start


RULE = WordingRule(
    slug="drug-and-number-together",
    title=N_("Drug and dose run together"),
    severity=Severity.ERROR,
    why=N_(
        "The last letter of the name is read as a figure: a final l before 50 mg becomes 150 mg."
    ),
    source=N_("ISMP list of error-prone dose designations (secondary copy read)"),
    reads=EVERY_KIND,
    find=_find,
    wrong="Draw up lidocaine20 mg.",
    right="Draw up lidocaine 20 mg.",
)
