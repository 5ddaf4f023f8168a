"""Words without their endings."""

from __future__ import annotations

import re
from functools import lru_cache

_ENDINGS = ("ingly", "ings", "ing", "ies", "ed", "es", "s", "e")
_SHORTEST_STEM = 3
_DOUBLED = re.compile(r"([bdgmnprt])\1$")


@lru_cache(maxsize=4096)
def stem(word: str) -> str:
    """Return a word without its ending.

    >>> [stem(word) for word in ("cutting", "cuts", "removed", "fill", "pass")]
    ['cut', 'cut', 'remov', 'fill', 'pass']
    """
    for ending in _ENDINGS:
        root = word.removesuffix(ending)
        if root != word and len(root) >= _SHORTEST_STEM and not word.endswith("ss"):
            return _DOUBLED.sub(r"\1", root)
    return word
