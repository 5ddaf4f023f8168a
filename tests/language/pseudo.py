"""A language of dots: whatever the program tells is dots, so what it forgot to tell stands out."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from gettext import NullTranslations

from chamberwise.engine.language import speaking
from chamberwise.engine.language.languages import Language

DOTS = Language("de_AT", "Dots", "...", is_reviewed=False)
"""A German of its own, so that numbers can be written, and nothing kept of German is met."""

_KEPT = re.compile(r"(\{[^{}]*\}|\{\{|\}\}|`[^`]*`|%s)")
_LETTER = re.compile(r"[^\W\d_]")


def dots(text: str) -> str:
    """Return a text without a letter of its own; what is filled in and names in backticks stay.

    >>> dots("`check` finds {count} problems")
    '`check` ····· {count} ········'
    """
    parts = _KEPT.split(text)
    return "".join(
        part if place % 2 else _LETTER.sub("·", part) for place, part in enumerate(parts)
    )


class _Dots(NullTranslations):
    def gettext(self, message: str) -> str:
        return dots(message)

    def ngettext(self, one: str, many: str, number: int) -> str:
        return dots(one if number == 1 else many)

    def pgettext(self, context: str, message: str) -> str:
        return dots(message)


@contextmanager
def speaking_dots() -> Iterator[None]:
    """Tell everything in dots for a while."""
    spoken = speaking._spoken
    before = spoken.language, spoken.texts
    spoken.language, spoken.texts = DOTS, _Dots()
    try:
        yield
    finally:
        spoken.language, spoken.texts = before
