"""Right eye, left eye and both eyes are written in words.

`AS` inside a stretch of capitals is the English word and is passed over.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_MEANS = {
    "OD": "right eye",
    "OS": "left eye",
    "OU": "both eyes",
    "AD": "right ear",
    "AS": "left ear",
    "AU": "both ears",
}
_SHORT = re.compile(r"\b(?:(?:O[DSU]|A[DSU])\b(?!['’-])|(?:O\.[DSU]|A\.[DSU])\.(?!\w))")
_CAPITALS_BEFORE = re.compile(r"\b[A-Z]{2,20}\s$")
_CAPITALS_AFTER = re.compile(r"\s[A-Z]{2,}\b")


def _find(text: str) -> Iterator[Hit]:
    for found in _SHORT.finditer(text):
        short = found.group().replace(".", "")
        if short == "AS" and _among_capitals(text, found):
            continue
        message = _('"{found}" shortens {meaning}').format(
            found=found.group(), meaning=_MEANS[short]
        )
        yield Hit(
            found.start(),
            found.end(),
            message,
            _advice(_MEANS[short]),
        )


def _advice(meaning: str) -> str:
    if meaning.endswith(("ear", "ears")):
        return _('write "{ear}" or, if the eye is meant, "{eye}"').format(
            ear=meaning, eye=meaning.replace("ear", "eye")
        )
    return _('write "{meaning}"').format(meaning=meaning)


def _among_capitals(text: str, found: re.Match[str]) -> bool:
    before = _CAPITALS_BEFORE.search(text[max(0, found.start() - 22) : found.start()])
    return before is not None or _CAPITALS_AFTER.match(text, found.end()) is not None


RULE = WordingRule(
    slug="eye-abbreviation",
    title=N_("Abbreviation for the side"),
    severity=Severity.ERROR,
    why=N_(
        "OD, OS and OU are taken for one another, for the ear, or for once a day: the "
        "wrong eye is treated."
    ),
    source=N_("ISMP list of error-prone abbreviations (secondary copy read)"),
    reads=EVERY_KIND,
    find=_find,
    wrong="Confirm the lens for OD.",
    right="Read aloud the lens for the right eye.",
)
