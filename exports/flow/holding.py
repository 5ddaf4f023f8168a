"""Words that no line end parts: what belongs together is joined by a space that holds."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import lru_cache

from chamberwise.exports.paper.sheet import Run

HOLD = "\u00a0"
_UNIT = (
    r"(?:%|mg|g|kg|mL|L|micrograms?|nanograms?|units?|mmol|mmHg|cmH2O|mm|cm|m|s|min|h|D|Hz|kHz|"
    r"seconds?|minutes?|hours?|days?|weeks?|times?|°C|°|"
    r"Sekunden?|Minuten?|Stunden?|Tagen?|Tage|Wochen?|Mikrogramm|Nanogramm|Einheit(?:en)?|mal)"
)
_NUMBER = re.compile(rf"(?<!\w)(\d[\d.,–-]*) (?={_UNIT}(?![\w]))")
_PER = re.compile(rf"(?<!\w)({_UNIT}) (per|pro) (?=\w)")


@lru_cache(maxsize=4096)
def held(text: str) -> str:
    """Return a text whose quantities are held together.

    >>> held("Inject 10 mg per mL now") == "Inject 10\u00a0mg\u00a0per\u00a0mL now"
    True
    """
    return _PER.sub(rf"\1{HOLD}\2{HOLD}", _NUMBER.sub(rf"\1{HOLD}", text))


def held_run(run: Run) -> Run:
    """Return a run of text whose quantities are held together."""
    text = held(run.text)
    return run if text == run.text else replace(run, text=text)


def unparted(text: str) -> str:
    """Return words that stay on one line."""
    return text.replace(" ", HOLD)
