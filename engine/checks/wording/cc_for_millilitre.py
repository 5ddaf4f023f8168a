"""Volumes are in mL; cc after a number, "per" or a stroke is a fault ("cc the letter" is none)."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_SHORT = re.compile(
    r"(?:(?<=[0-9])|(?<=[0-9/]\s)|(?<=/)|(?<=\bper\s)|(?<=\ba\s))(?:ccs?|CCs?|c\.c\.)(?!\w)"
)


def _find(text: str) -> Iterator[Hit]:
    for found in _SHORT.finditer(text):
        message = _('"{found}" stands for millilitre').format(found=found.group())
        yield Hit(
            found.start(),
            found.end(),
            message,
            _('write "mL" instead of "{found}"').format(found=found.group()),
        )


RULE = WordingRule(
    slug="cc-for-millilitre",
    title=N_("cc for millilitre"),
    severity=Severity.ERROR,
    why=N_("cc is read as U for units: the wrong amount, and of the wrong thing, is drawn up."),
    source=N_("ISMP list of error-prone abbreviations (secondary copy read)"),
    reads=EVERY_KIND,
    find=_find,
    wrong="Inject 0.1 cc of triamcinolone.",
    right="Inject 0.1 mL of triamcinolone.",
)
