"""Whether two words are one word, spelt in two ways.

Only what can hardly be another word counts: letters that British and American spelling exchange,
two neighbours swapped, a letter doubled or not, and inside a long word one letter left out.
"""

from __future__ import annotations

import re

from chamberwise.engine.comparing.turning import TURNING, is_medicine

LONG = 5
VERY_LONG = 7
_EXCHANGED = (
    (r"is(?=e|ing|ation)", "iz"),
    (r"ys(?=e|ing)", "yz"),
    (r"our\b", "or"),
    (r"our(?=ed|ing|s\b)", "or"),
    (r"ae|oe", "e"),
    (r"tre\b", "ter"),
    (r"ence\b", "ense"),
    (r"ogue\b", "og"),
    (r"amme\b", "am"),
)


def spelt_alike(one: str, other: str) -> bool:
    """Return whether two words, in small letters, are the same word.

    >>> spelt_alike("anaesthetise", "anesthetize"), spelt_alike("visocelastic", "viscoelastic")
    (True, True)
    >>> spelt_alike("inject", "eject"), spelt_alike("hold", "fold")
    (False, False)
    """
    if one == other or _american(one) == _american(other):
        return True
    if one in TURNING and other in TURNING:
        return False
    if min(len(one), len(other)) < LONG or (is_medicine(one) and is_medicine(other)):
        return False
    return (
        _neighbours_swapped(one, other)
        or _undoubled(one) == _undoubled(other)
        or _lacks_a_letter(one, other)
        or _lacks_a_letter(other, one)
    )


def _american(word: str) -> str:
    for british, american in _EXCHANGED:
        word = re.sub(british, american, word)
    return word


def _neighbours_swapped(one: str, other: str) -> bool:
    if len(one) != len(other):
        return False
    apart = [place for place, pair in enumerate(zip(one, other, strict=True)) if pair[0] != pair[1]]
    if len(apart) != 2 or apart[1] - apart[0] != 1:
        return False
    first, second = apart
    return one[first] == other[second] and one[second] == other[first]


def _undoubled(word: str) -> str:
    return re.sub(r"(.)\1", r"\1", word)


def _lacks_a_letter(one: str, other: str) -> bool:
    """Return whether one word is the other without a letter inside it; endings tell words apart."""
    if len(other) - len(one) != 1 or len(other) < VERY_LONG:
        return False
    return any(other[:at] + other[at + 1 :] == one for at in range(1, len(other) - 1))
