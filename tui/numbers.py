"""Numbers typed to choose by: one, or several in their order."""

from __future__ import annotations

import re

_NUMBERS = re.compile(r"\d{1,3}(?:\s*(?:[,+&]|\band\b|\bthen\b|\s)\s*\d{1,3}){0,7}")


def numbers_in(text: str) -> tuple[int, ...]:
    """Return the numbers that a text consists of, each once; none where it holds anything else.

    >>> numbers_in("2 1"), numbers_in("1, 3 and 1"), numbers_in("20 to 30")
    ((2, 1), (1, 3), ())
    """
    found = _NUMBERS.fullmatch(text)
    return tuple(dict.fromkeys(map(int, re.findall(r"\d+", text)))) if found else ()
