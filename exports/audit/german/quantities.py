"""Numbers and units as they are written in German, and what is wrong with how they are."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

Search = Callable[[str], Iterator[str]]

_START = r"(?<![\w.,])"
_NUMBER = r"(?:[0-9]{1,3}(?:\.[0-9]{3})+(?![0-9])|[0-9]+)(?:[.,][0-9]+)?"
_UNIT = (
    r"(?:mg|g|kg|µg|μg|mcg|ug|ng|mL|ml|µL|L|l|mmol|mmHg|Milligramm|Gramm|Mikrogramm|Nanogramm|"
    r"Milliliter|Liter|Einheit(?:en)?|I\.?E\.?)(?!\w)"
)
_SPACED = rf"(?:{_UNIT}|(?:mm|cm)(?!\w))"
_TRAILING = re.compile(
    rf"{_START}[0-9][0-9.]*[.,][0-9]*0(?=\s?(?:{_UNIT}|%)|\s?(?:bis|-|–)\s?[0-9.,]+\s?{_UNIT})"
)
_NAKED = re.compile(rf"(?<![\w.,])[.,][0-9]+(?=\s?(?:{_SPACED}|%))")
_TOGETHER = re.compile(rf"{_START}{_NUMBER}{_SPACED}")
_TIME = r"(?:s|min|h|Sekunden?|Minuten?|Stunden?|Tage?n?|Wochen?)(?!\w)"
_SPLIT = re.compile(rf"{_START}({_NUMBER})[^\S\n]?\n(?:{_SPACED}|%|m(?!\w)|{_TIME})")
_MICRO = re.compile(rf"{_START}{_NUMBER}\s?(?:µg|μg|mcg|ug|µL)(?!\w)")
_UNITS = re.compile(rf"{_START}{_NUMBER}\s?(?:I\.?\s?E\.?|I\.?U\.?|E|U)(?![\w.])")
_CUBIC = re.compile(rf"{_START}{_NUMBER}\s?(?:ccm|cm³|cc)(?!\w)")
_RATIO = re.compile(r"(?<![\w.,:])1\s?:\s?[0-9][0-9.]*(?![\w:])")


def _search(pattern: re.Pattern[str], message: str) -> Search:
    def find(text: str) -> Iterator[str]:
        for found in pattern.finditer(text):
            yield _(message).format(written=" ".join(found.group().split()))

    return find


trailing_zero = _search(_TRAILING, N_('"{written}" has a trailing zero'))
naked_decimal = _search(_NAKED, N_('"{written}" has no nought before the decimal sign'))
run_together_unit = _search(_TOGETHER, N_('"{written}" has no space before its unit'))
microgram_sign = _search(_MICRO, N_('"{written}" has a unit that is read as another'))
unit_abbreviation = _search(_UNITS, N_('"{written}" has its units abbreviated'))
cubic_centimetre = _search(_CUBIC, N_('"{written}" is not in millilitres'))
ratio_strength = _search(_RATIO, N_('"{written}" tells a strength as a ratio'))


def split_quantity(words: str) -> str:
    """Return the number that a line end parts from its unit, if there is one.

    >>> split_quantity("0,5\\nmL Triamcinolon")
    '0,5'
    >>> split_quantity("Schublade 1, 20\\ns Weg")
    '20'
    """
    found = _SPLIT.search(words)
    return found.group(1) if found else ""
