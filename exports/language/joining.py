"""Lists in a sentence, and titles inside one."""

from __future__ import annotations

from collections.abc import Iterable

from chamberwise.engine.language.languages import ENGLISH
from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.language.texts import gettext as _


def either(labels: Iterable[str]) -> str:
    """Return values that are all still possible, joined by "or".

    >>> either(["none", "only at the tear"])
    'none or only at the tear'
    """
    return _(" or ").join(labels)


def alternatives(labels: Iterable[str]) -> str:
    """Return labels, which may hold commas themselves, joined so that each is told apart.

    >>> alternatives(["none", "a strand, thin"])
    'none, or a strand, thin'
    """
    return _(", or ").join(labels)


def one_after_another(texts: Iterable[str]) -> str:
    """Return what is done in turn, joined by "then"."""
    return _(", then ").join(texts)


def inside(text: str) -> str:
    """Return a text as it stands inside a sentence: not with a capital of its own in English.

    Capitals of a language that begins its nouns with one stay: nothing here knows which word is
    one.

    >>> inside("Withdraw the tip"), inside("OVD first")
    ('withdraw the tip', 'OVD first')
    """
    if spoken() is not ENGLISH or text[1:2].isupper():
        return text
    return text[:1].lower() + text[1:]


def begun(text: str) -> str:
    """Return a clause as it stands at the beginning of a sentence.

    >>> begun("an act was added")
    'An act was added'
    """
    return text[:1].upper() + text[1:]
