"""Micrograms are written in full, never with the Greek letter or as "ug"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.quantity import NUMBER
from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_SIGN = re.compile(
    rf"(?:(?<![\w.,])(?P<number>{NUMBER})\s?)?(?<![A-Za-z])(?:[µμ]g|ug)s?(?![A-Za-z])"
)


def _find(text: str) -> Iterator[Hit]:
    for found in _SIGN.finditer(text):
        written = f"{found.group('number') or ''} micrograms".strip()
        message = _('"{found}" is not written in full').format(found=found.group())
        yield Hit(
            found.start(), found.end(), message, _('write "{written}"').format(written=written)
        )


RULE = WordingRule(
    slug="microgram-sign",
    title=N_("Sign for microgram"),
    severity=Severity.ERROR,
    why=N_("Written by hand or badly printed, the sign is read as mg: a thousand times the dose."),
    source=N_("ISMP list of error-prone abbreviations (secondary copy read)"),
    reads=EVERY_KIND,
    find=_find,
    wrong="Give 50 µg of carbachol.",
    right="Give 50 micrograms of carbachol.",
)
