"""How often a text says no, by the word list of its language."""

from __future__ import annotations

import re
from functools import cache

from chamberwise.engine.translating.word_list import any_of, word_list


def negations(text: str, language: str) -> tuple[str, ...]:
    """Return the words of a text that say no; none where the language has no word list.

    >>> negations("Do not stop unless it is no more than 5 mL.", "en")
    ('not', 'unless')
    """
    find = _finder(language)
    if find is None:
        return ()
    # An apostrophe may be typed or set.
    return tuple([each for each in find.findall(text.replace("\u2019", "'")) if each])


@cache
def _finder(language: str) -> re.Pattern[str] | None:
    """Return what finds words that say no, as its one group, and passes over others."""
    words = word_list(language)
    if words is None:
        return None
    both = rf"(?:{any_of(words.passed_over)})(?!\w)|(?P<negator>{any_of(words.negators)})(?!\w)"
    return re.compile(rf"(?<!\w)(?:{both})", re.IGNORECASE)
