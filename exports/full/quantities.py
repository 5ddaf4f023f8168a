"""A number and its unit, and a number and what it counts, stay on one line."""

from __future__ import annotations

import re

_UNITS = (
    "mg|g|kg|mL|ml|L|micrograms?|nanograms?|units?|mm|cm|mmHg|mmol|s|min|h|%|gauge|dioptres?|"
    "seconds?|minutes?|hours?|days?|weeks?|months?|years?|times?|degrees?|"
    "Sekunden?|Minuten?|Stunden?|Tagen?|Tage|Wochen?|Monaten?|Monate|Jahren?|Jahre|Grad|Dioptrien?|"
    "Mikrogramm|Nanogramm|Einheit(?:en)?|mal"
)
_APART = re.compile(rf"(?<=\d) (?={_UNITS})(?=(?:{_UNITS})(?!\w))")


def joined(text: str) -> str:
    """Return the text with no-break spaces between numbers and units.

    >>> joined("Give 2 mg in 5 min to 3 people.").count("\\u00a0")
    2
    """
    return _APART.sub("\u00a0", " ".join(text.split()))
