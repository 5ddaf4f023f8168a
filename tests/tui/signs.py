"""A language of signs: every letter that is told turns into one of another script, none wider.

What is still in Latin letters on a screen was never told in the language spoken.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from gettext import NullTranslations
from string import ascii_lowercase, ascii_uppercase

from chamberwise.engine.language import speaking
from chamberwise.engine.language.languages import Language

SIGNS = str.maketrans(
    ascii_lowercase + ascii_uppercase,
    "".join(chr(0x430 + at) for at in range(26)) + "".join(chr(0x410 + at) for at in range(26)),
)
FILLED_IN = re.compile(r"(\{[^}]*\}|%\(\w+\)\w|%\w)")
LATIN = re.compile(r"(?:--|\b)[A-Za-z][A-Za-z'-]+")


class Signs(NullTranslations):
    """Turns the letters of a text, but for what is filled in."""

    def gettext(self, message: str) -> str:
        pieces = FILLED_IN.split(message)
        return "".join(each if at % 2 else each.translate(SIGNS) for at, each in enumerate(pieces))

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return self.gettext(msgid1 if n == 1 else msgid2)

    def pgettext(self, context: str, message: str) -> str:
        return self.gettext(message)


@contextmanager
def spoken_in_signs() -> Iterator[None]:
    """Speak in signs for a while; numbers and days are written as in German."""
    before = speaking._spoken.language, speaking._spoken.texts
    speaking._spoken.language = Language("de", "Signs", "Signs", is_reviewed=False)
    speaking._spoken.texts = Signs()
    try:
        yield
    finally:
        speaking._spoken.language, speaking._spoken.texts = before


def untold(shown: str, known: Iterator[str] | frozenset[str] = frozenset()) -> list[str]:
    """Return the words in Latin letters that are none of those known."""
    kept = {word for text in known for word in LATIN.findall(text)}
    return sorted({word for word in LATIN.findall(shown) if word not in kept})
