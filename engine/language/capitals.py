"""Capital letters within a sentence: English drops one that German keeps."""

from __future__ import annotations

from chamberwise.engine.language.languages import ENGLISH
from chamberwise.engine.language.speaking import spoken


def small(text: str) -> str:
    """Return a text as it stands within a sentence: in English it begins small.

    >>> small("Whole, centred")
    'whole, centred'
    """
    return text[:1].lower() + text[1:] if spoken() is ENGLISH else text


def in_sentence(text: str) -> str:
    """Return a text within a sentence, in English without any capital.

    >>> in_sentence("Pull the Tip")
    'pull the tip'
    """
    return text.lower() if spoken() is ENGLISH else text
