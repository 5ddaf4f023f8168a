"""Micrograms and nanograms are written in full in British texts."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.quantity import NUMBER, NUMBER_START
from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_SHORT = re.compile(
    rf"(?:{NUMBER_START}(?P<number>{NUMBER})\s?)?(?<![A-Za-z])(?:(?P<micro>mcgs?)|ngs?)(?![\w-])"
)


def _find(text: str) -> Iterator[Hit]:
    for found in _SHORT.finditer(text):
        unit = "micrograms" if found.group("micro") else "nanograms"
        written = f"{found.group('number') or ''} {unit}".strip()
        message = _('"{found}" is not written in full').format(found=found.group())
        yield Hit(
            found.start(), found.end(), message, _('write "{written}"').format(written=written)
        )


RULE = WordingRule(
    slug="mass-abbreviation",
    title=N_("Micrograms or nanograms shortened"),
    severity=Severity.ERROR,
    why=N_("mcg is read as mg and ng as mg or as nasogastric: a thousand times the dose and more."),
    source=N_("UK rule for writing prescriptions (secondary copy read)"),
    reads=EVERY_KIND,
    find=_find,
    wrong="Inject 100 mcg of carbachol.",
    right="Inject 100 micrograms of carbachol.",
)
