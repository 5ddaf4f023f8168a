"""Which language is spoken: one for the process, chosen before the first text is told."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from gettext import NullTranslations, translation

from chamberwise.engine.language.languages import CATALOGUES, DOMAIN, ENGLISH, LANGUAGES, Language


@dataclass(slots=True)
class _Spoken:
    language: Language
    texts: NullTranslations


_spoken = _Spoken(ENGLISH, NullTranslations())


def speak(code: str) -> Language:
    """Tell every text from now on in the language of that code.

    Raises `KeyError` where there is no such language.
    """
    language = LANGUAGES[code]
    is_written = language is ENGLISH
    texts = NullTranslations() if is_written else translation(DOMAIN, CATALOGUES, [code])
    _spoken.language, _spoken.texts = language, texts
    return language


def spoken() -> Language:
    """Return the language that is spoken."""
    return _spoken.language


def spoken_texts() -> NullTranslations:
    """Return the texts of the language that is spoken."""
    return _spoken.texts


@contextmanager
def speaking(code: str) -> Iterator[Language]:
    """Speak a language for a while."""
    before = _spoken.language.code
    try:
        yield speak(code)
    finally:
        speak(before)
