"""A language made for tests: every text told stands in brackets, so that what is not told shows."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from gettext import NullTranslations

from chamberwise.engine.language import speaking
from chamberwise.engine.language.languages import Language

BRACKETED = Language("de_AT", "Bracketed", "Bracketed", is_reviewed=True)
"""Under a code of its own, so that nothing kept for another language is taken for it; numbers and
days are those of CLDR for that code."""
_INNERMOST = re.compile(r"⟦[^⟦⟧]*⟧")
_WORD = re.compile(r"[A-Za-z][A-Za-z-]*")


class _Brackets(NullTranslations):
    def gettext(self, message: str) -> str:
        return f"⟦{message}⟧"

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return f"⟦{msgid1 if n == 1 else msgid2}⟧"

    def pgettext(self, _context: str, message: str) -> str:
        return f"⟦{message}⟧"


@contextmanager
def bracketed() -> Iterator[None]:
    """Speak the bracketed language for a while."""
    kept = speaking._spoken
    before = kept.language, kept.texts
    kept.language, kept.texts = BRACKETED, _Brackets()
    try:
        yield
    finally:
        kept.language, kept.texts = before


def untold(text: str, known: frozenset[str] = frozenset()) -> list[str]:
    """Return the words outside brackets and backticks, but those known."""
    while (shorter := _INNERMOST.sub("", text)) != text:
        text = shorter
    text = re.sub(r"`[^`]*`", "", text)
    return [word for word in _WORD.findall(text) if word not in known]
