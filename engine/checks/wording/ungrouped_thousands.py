"""Numbers from 10,000 have their thousands grouped.

From 1,000 to 9,999 both ways are accepted. Telephone, lot and reference numbers are no amounts.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_LONG = re.compile(r"(?<![\w.,:/#+-])[1-9][0-9]{4,14}+(?![\w/-])(?!:[0-9])")
_NUMBER_OF_A_THING = re.compile(
    r"\b(?:phones?|telephone|tel|ring|call|dial|bleep|pager?|ext|extension|mobile|fax|lot|batch"
    r"|serial|ref|reference|code|id|no|number|pubmed|pmid|pmcid|nct|item|form|room|licence|gmc|model)\b"
    r"[\s.:]{0,3}(?:on\s|is\s)?$",
    re.IGNORECASE,
)


def _find(text: str) -> Iterator[Hit]:
    for found in _LONG.finditer(text):
        if _NUMBER_OF_A_THING.search(text[max(0, found.start() - 24) : found.start()]):
            continue
        message = _('"{found}" has no commas').format(found=found.group())
        yield Hit(
            found.start(),
            found.end(),
            message,
            _('write "{written}"').format(written=f"{int(found.group()):,}"),
        )


RULE = WordingRule(
    slug="ungrouped-thousands",
    title=N_("Thousands not grouped"),
    severity=Severity.WARNING,
    why=N_(
        "100000 is read as 10,000 or 1,000,000: noughts in a row cannot be counted at a glance."
    ),
    source=N_("ISMP list of error-prone dose designations (secondary copy read)"),
    reads=EVERY_KIND,
    find=_find,
    wrong="Dilute the vial to 10000 units per mL.",
    right="Dilute the vial to 10,000 units per mL.",
)
