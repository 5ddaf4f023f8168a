"""A language that puts every text in brackets, and a library whose own words have no Latin letter.

Whatever letter then stands outside brackets is a word of the program that nobody can translate.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import fields, is_dataclass, replace
from gettext import NullTranslations
from typing import Any

from chamberwise.engine.language import speaking as room
from chamberwise.engine.language.languages import GERMAN

OPENS, CLOSES = "⟦", "⟧"
WORDS = frozenset(
    [
        "t",
        "title",
        "summary",
        "question",
        "label",
        "sign",
        "text",
        "short",
        "says",
        "why",
        "because",
        "harm",
        "instead",
        "cite",
        "note",
        "where",
        "about_text",
        "amount",
        "use_when",
        "authors",
        "approved_by",
        "phases",
        "unit",
        "number",
        "hours",
        "outside_hours",
        "product",
        "shelf",
        "stock",
        "cue",
        "lesson",
        "method",
        "reason",
        "when",
        "plan",
    ]
)
"""Fields of the model that hold words for a reader; all others are names."""
LETTERS = str.maketrans(
    "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ",
    "абцдефгхийклмнопярстувшюызАБЦДЕФГХИЙКЛМНОПЯРСТУВШЮЫЗ",
)
_INNERMOST = re.compile(f"{OPENS}[^{OPENS}{CLOSES}]*{CLOSES}")
_NAMES = re.compile(
    r"`[^`]*`|chamberwise [^.]*|Chamberwise|CHAMBERWISE|\b[A-Z0-9]{4}-[A-Z0-9]{4}-[A-Z0-9]\b"
    r"|\b[a-z0-9]+(?:[-/][a-z0-9]+)+\b|\bA[1-4]\b|\b[A-Z]{3}-\d+\b|\d+ (?:s|min|mm|m|em)\b"
    r"|(?m:^ *[A-Da-z][.:] )|L\*|#[0-9a-f]{6}"
)


class Bracketed(NullTranslations):
    """Says every text as it is, in brackets."""

    def gettext(self, message: str) -> str:
        return f"{OPENS}{message}{CLOSES}"

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return self.gettext(msgid1 if n == 1 else msgid2)

    def pgettext(self, context: str, message: str) -> str:
        return self.gettext(message)


@contextmanager
def bracketed() -> Iterator[None]:
    """Speak the bracketed language for a while; numbers are German."""
    before = room._spoken.language, room._spoken.texts
    room._spoken.language, room._spoken.texts = GERMAN, Bracketed()
    try:
        yield
    finally:
        room._spoken.language, room._spoken.texts = before


def in_other_letters(value: Any, is_text: bool = False) -> Any:
    """Return a model whose words are in Cyrillic letters; names stay."""
    if isinstance(value, str):
        return value.translate(LETTERS) if is_text and type(value) is str else value
    if isinstance(value, tuple):
        return tuple(in_other_letters(each, is_text) for each in value)
    if isinstance(value, Mapping):
        return {key: in_other_letters(each, is_text) for key, each in value.items()}
    if is_dataclass(value) and not isinstance(value, type):
        changed = {
            each.name: in_other_letters(getattr(value, each.name), each.name in WORDS)
            for each in fields(value)
            if each.init
        }
        return replace(value, **changed)
    return value


def untold(text: str, *, known: frozenset[str] = frozenset()) -> list[str]:
    """Return every line with Latin words that no catalogue can say."""
    bare = text
    while (shorter := _INNERMOST.sub(" ", bare)) != bare:
        bare = shorter
    found = []
    for line in bare.splitlines():
        left = re.findall(r"[A-Za-z]{2,}", _NAMES.sub(" ", line))
        if any(word not in known for word in left):
            found.append(line)
    return found
