"""How far the marks on capitals, as the dots of Ö, reach above the letters that have none."""

from __future__ import annotations

from unicodedata import decomposition

REACH = 0.17
"""Of the size, above the edge from which a line is measured; the font has 0.161 for a bold Ö."""


def above(words: str) -> float:
    """Return by how many sizes words reach higher than is measured.

    >>> above("Open the eye"), above("Auge und Öffnung")
    (0.0, 0.17)
    """
    return REACH if any(each.isupper() and decomposition(each) for each in words) else 0.0
