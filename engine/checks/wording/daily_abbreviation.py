"""How often a medicine is given is written in words."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_SHORT = re.compile(
    r"(?<![\w.])(?:(?P<other>QOD|qod|q\.o\.d\.|Q\.O\.D\.)"
    r"|(?P<daily>QD|qd|q\.d\.|Q\.D\.|od|o\.d\.|q1d|Q1D)"
    r"|(?P<bedtime>BT|HS|hs|h\.s\.|qhs|QHS|q\.h\.s\.)"
    r"|(?P<nightly>qn|q\.n\.)"
    r"|(?P<evening>q6PM|q6pm))(?![\w-])"
)
_IN_WORDS = {
    "other": "every other day",
    "daily": "once a day",
    "bedtime": "at bedtime",
    "nightly": "every night",
    "evening": "every day at 18:00",
}


def _find(text: str) -> Iterator[Hit]:
    for found in _SHORT.finditer(text):
        in_words = _IN_WORDS[found.lastgroup or "daily"]
        message = _('"{found}" shortens "{in_words}"').format(
            found=found.group(), in_words=in_words
        )
        yield Hit(
            found.start(), found.end(), message, _('write "{in_words}"').format(in_words=in_words)
        )


RULE = WordingRule(
    slug="daily-abbreviation",
    title=N_("Abbreviation for how often"),
    severity=Severity.ERROR,
    why=N_(
        "QD is read as four times a day and o.d. as right eye: the patient takes four "
        "times the dose, or treats the wrong eye."
    ),
    source=N_(
        "ISMP and Joint Commission lists of error-prone abbreviations (secondary copies read)"
    ),
    reads=EVERY_KIND,
    find=_find,
    wrong="Prescribe prednisolone drops QD.",
    right="Prescribe prednisolone drops once a day.",
)
