"""The figures of a text with their units, read as its language writes them."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from decimal import Decimal
from functools import cache

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.translating.word_list import any_of, word_list

_DIGITS = r"[0-9]+(?:[.,][0-9]+)*"


@dataclass(frozen=True, slots=True, order=True)
class Figure:
    """A number with its unit and what it is per; one the language cannot write stays as it is."""

    value: str
    unit: str = ""
    per: str = ""

    def __str__(self) -> str:
        """Return it in one way for every language."""
        per = f"/{self.per}" if self.per else ""
        return f"{self.value} {self.unit}{per}".strip()


def figures(text: str, language: str) -> Counter[Figure]:
    """Return how often each figure comes, numbers in words among them.

    >>> figures("Give 0,5 mg in 1.000 mL.", "de") == figures("Give 0.5 mg in 1,000 mL.", "en")
    True
    """
    find = _finder(language)
    words = word_list(language)
    found: Counter[Figure] = Counter()
    for each in find.finditer(text):
        unit = (words.units.get(each["unit"]) if words and each["unit"] else "") or ""
        per = (words.units.get(each["per"]) if words and each["per"] else "") or ""
        found[Figure(_value(each["number"], language), unit, per)] += 1
    return found


def _value(written: str, language: str) -> str:
    """Return a number, read as the language writes it, without trailing zeros."""
    if not written[0].isdigit():
        words = word_list(language)
        numbers = words.numbers if words else {}
        return next(value for word, value in numbers.items() if _is(word, written))
    point, group, grouped, plain = _ways(language)
    if grouped.fullmatch(written):
        written = written.replace(group, "")
    elif not plain.fullmatch(written):
        return _("{written} (written as in no text in `{language}`)").format(
            written=written, language=language
        )
    value = f"{Decimal(written.replace(point, '.')):f}"
    return value.rstrip("0").rstrip(".") if "." in value else value


@cache
def _ways(language: str) -> tuple[str, str, re.Pattern[str], re.Pattern[str]]:
    """Return a language's marks for decimals and thousands, and how it writes with and without."""
    from babel.numbers import get_decimal_symbol, get_group_symbol

    point, group = get_decimal_symbol(language), get_group_symbol(language)
    rest = rf"(?:{re.escape(point)}[0-9]+)?"
    grouped = rf"[0-9]{{1,3}}(?:{re.escape(group)}[0-9]{{3}})+{rest}"
    return point, group, re.compile(grouped), re.compile(f"[0-9]+{rest}")


def _is(word: str, written: str) -> bool:
    said = written.casefold()
    return said.startswith(word[:-1]) if word.endswith("*") else said == word


@cache
def _finder(language: str) -> re.Pattern[str]:
    words = word_list(language)
    if words is None:
        return re.compile(rf"(?P<number>{_DIGITS})(?P<unit>)(?P<per>)")
    numbers = any_of(words.numbers)
    units, per = any_of(words.units), any_of(words.per)
    number = rf"(?P<number>{_DIGITS}|(?<!\w)(?i:{numbers})(?!\w))"
    unit = rf"(?:[\s-]?(?P<unit>{units})(?!\w)(?:\s?(?:{per})\s?(?P<per>{units})(?!\w))?)?"
    return re.compile(number + unit)
