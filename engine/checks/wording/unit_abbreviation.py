"""The word "units" is written in full after a number."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.quantity import NUMBER, NUMBER_START
from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_SHORT = re.compile(
    rf"{NUMBER_START}(?P<number>{NUMBER})\s?(?:I\.U\.|i\.u\.|IU|iu|[Uu])(?![\w'’-])"
)


def _find(text: str) -> Iterator[Hit]:
    for found in _SHORT.finditer(text):
        number = found.group("number")
        word = "unit" if number == "1" else "units"
        message = _('"{found}" shortens units').format(found=found.group())
        yield Hit(
            found.start(),
            found.end(),
            message,
            _('write "{number} {word}"').format(number=number, word=word),
        )


RULE = WordingRule(
    slug="unit-abbreviation",
    title=N_("U or IU for units"),
    severity=Severity.ERROR,
    why=N_("U is read as 0, 4 or cc, and IU as IV or 10: ten times the dose, or the wrong route."),
    source=N_("Joint Commission list of abbreviations not to be used (secondary copy read)"),
    reads=EVERY_KIND,
    find=_find,
    wrong="Add hyaluronidase 15 IU to each mL of the block.",
    right="Add hyaluronidase 15 units to each mL of the block.",
)
