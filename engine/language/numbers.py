"""Numbers and dates as they are written in the language that is spoken."""

from __future__ import annotations

from datetime import date

from chamberwise.engine.language.languages import ENGLISH
from chamberwise.engine.language.speaking import spoken


def decimal(written: str) -> str:
    """Return a decimal number, written with a point, as the language writes it.

    Digits stay as they are: nothing is rounded, and thousands are not grouped.

    >>> decimal("0.25")
    '0.25'
    """
    if spoken() is ENGLISH:
        return written
    from babel.numbers import get_decimal_symbol

    return written.replace(".", get_decimal_symbol(spoken().code))


def day_in_words(day: date) -> str:
    """Return a day with its weekday and month in short words, e.g. `Mon 9 Nov 2026`."""
    if spoken() is ENGLISH:
        return f"{day:%a} {day.day} {day:%b %Y}"
    from babel.dates import format_date

    return format_date(day, "EEE d. MMM y", spoken().code)


def thousands(number: int) -> str:
    """Return a whole number with its thousands grouped as the language groups them.

    >>> thousands(12345)
    '12,345'
    """
    if spoken() is ENGLISH:
        return f"{number:,}"
    from babel.numbers import format_decimal

    return format_decimal(number, locale=spoken().code)
