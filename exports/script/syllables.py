"""How long words take to say, by a count of their syllables: an estimate, for any alphabet."""

from __future__ import annotations

import re
import unicodedata

VOWELS = "aeiouyαεηιουωаеёиоуыэюяіїєæøœ"
A_SECOND = 4
_GROUPS = re.compile(f"[{VOWELS}]+")


def syllables(text: str) -> int:
    """Return about how many syllables a text has; a figure counts as two.

    >>> syllables("Fill the chamber")
    4
    """
    return sum(_of_word(word) for word in text.split())


def _of_word(word: str) -> int:
    plain = "".join(
        letter for letter in unicodedata.normalize("NFD", word.casefold()) if letter.isalnum()
    )
    figures = sum(letter.isdigit() for letter in plain)
    groups = len(_GROUPS.findall(plain))
    if re.search(r"[^aeiouyl]e$", plain) and groups > 1:
        groups -= 1
    return 2 * figures + max(groups, 1 if plain and not figures else 0)
