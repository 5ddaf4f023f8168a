"""Whether two texts come to the same in other words: figures for words, units, synonyms.

The groups are of words that a theatre team uses one for another (common practice, no source). A
pair that stands in none is not held to say the same; a group too few asks for a look, one too many
hides a change.
"""

from __future__ import annotations

import re
from decimal import Decimal

from chamberwise.engine.checks.wording.quantity import plainly, value_of

_SMALL = "a an the this that these those its their your his her"
ARTICLES = frozenset(_SMALL.split())
"""Words that can come and go in a warning and leave it what it was."""

_COUNTED = "one two three four five six seven eight nine ten eleven twelve"
_FIGURES = {word: str(number) for number, word in enumerate(_COUNTED.split(), 1)}
_RANKED = "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth"
_ORDINALS = {str(number): word for number, word in enumerate(_RANKED.split(), 1)}
_IN_BASE_UNITS = {
    "g": (Decimal(10**6), "microgram"),
    "mg": (Decimal(10**3), "microgram"),
    "microgram": (Decimal(1), "microgram"),
    "l": (Decimal(10**6), "microlitre"),
    "ml": (Decimal(10**3), "microlitre"),
    "microlitre": (Decimal(1), "microlitre"),
    "cm": (Decimal(10), "mm"),
    "mm": (Decimal(1), "mm"),
    "week": (Decimal(7), "day"),
    "weeks": (Decimal(7), "day"),
    "day": (Decimal(1), "day"),
    "days": (Decimal(1), "day"),
    "h": (Decimal(3600), "second"),
    "hour": (Decimal(3600), "second"),
    "hours": (Decimal(3600), "second"),
    "s": (Decimal(1), "second"),
    "min": (Decimal(60), "second"),
    "minute": (Decimal(60), "second"),
    "minutes": (Decimal(60), "second"),
    "second": (Decimal(1), "second"),
    "seconds": (Decimal(1), "second"),
}
_PHRASES = {
    "at once": "immediately",
    "straight away": "immediately",
    "right away": "immediately",
    "out loud": "aloud",
    "write down": "record",
    "make sure": "ensure",
    "prior to": "before",
    "carry on": "continue",
    "switch off": "turn off",
    "switch on": "turn on",
    "hand over": "pass",
    "posterior capsule": "back capsule",
    "anterior capsule": "front capsule",
}
_GROUPS = """
    suture stitch
    sutures stitches
    tell inform notify
    call ring phone telephone
    close closed shut
    start begin commence
    stop halt
    fetch bring get
    put place
    show reveal
    look inspect examine
    check verify
    record document note
    use employ
    large big
    small little
    quick fast rapid
    quickly fast rapidly
    immediately instantly
    each every
    until till
    below beneath underneath
    operation surgery procedure
    speak talk
    piece fragment
    pieces fragments
    give administer
    rinse wash
    steady stable
    lift raise elevate
    enlarge widen
    book arrange schedule
    choose select
    edge border
    edges borders
    drug medicine medication
    instrument tool
    ready prepared
    allow permit
    continue proceed
    approximately about roughly
    sure certain
    needed required necessary
"""
_CALLED = {
    word: group.split()[0] for group in _GROUPS.strip().splitlines() for word in group.split()
}


def in_figures(before: list[str], after: list[str]) -> tuple[list[str], list[str]]:
    """Return the words of two texts with numbers in figures, where only the writing differs.

    >>> in_figures(["two", "weeks"], ["2", "weeks"])
    (['2', 'weeks'], ['2', 'weeks'])
    >>> in_figures(["one", "port"], ["two", "ports"])
    (['one', 'port'], ['two', 'ports'])
    """
    one, other = ([_FIGURES.get(word, word) for word in side] for side in (before, after))
    is_written_otherwise = _numbers(before) != _numbers(after) and _numbers(one) == _numbers(other)
    return (one, other) if is_written_otherwise else (before, after)


def _numbers(words: list[str]) -> list[str]:
    return [word for word in words if word[0].isdigit()]


def with_ordinals_in_words(text: str) -> str:
    """Return a text in small letters with `3rd` as `third`."""
    return re.sub(r"\b(\d+)(?:st|nd|rd|th)\b", lambda m: _ORDINALS.get(m[1], m[0]), text)


def are_the_same_amounts(before: list[str], after: list[str]) -> bool:
    """Return whether two texts differ in the unit that an amount is given in and in nothing else.

    >>> are_the_same_amounts(["0.1", "mg", "per", "ml"], ["100", "microgram", "per", "ml"])
    True
    >>> are_the_same_amounts(["10", "mg"], ["10", "microgram"])
    False
    """
    return _in_base_units(before) == _in_base_units(after)


def _in_base_units(words: list[str]) -> list[str]:
    found = [_FIGURES.get(word, word) for word in words]
    for place, unit in enumerate(found[1:], 1):
        number = found[place - 1]
        if unit in _IN_BASE_UNITS and number[0].isdigit():
            times, base = _IN_BASE_UNITS[unit]
            found[place - 1 : place + 1] = [plainly(value_of(number) * times), base]
    return found


def say_the_same(before: list[str], after: list[str]) -> bool:
    """Return whether two texts are the same but for articles and words of one group.

    >>> say_the_same("suture the wound at once".split(), "stitch wound immediately".split())
    True
    >>> say_the_same("suture the wound".split(), "press the wound".split())
    False
    """
    return _plainest(before) == _plainest(after)


def _plainest(words: list[str]) -> list[str]:
    text = " ".join(words)
    for phrase, word in _PHRASES.items():
        text = re.sub(rf"\b{phrase}\b", word, text)
    return [_CALLED.get(word, word) for word in text.split() if word not in ARTICLES]
