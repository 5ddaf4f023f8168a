"""Words so long that they may be parted at the end of a line, where their place is narrower.

Compounds of some languages have forty letters. Parted where the language parts them they are still
read; made smaller with everything around them they are not.
"""

from __future__ import annotations

import re

LEAST = 17
"""Letters; `words.typ` has the same."""
_LONG = re.compile(rf"[^\W\d_]{{{LEAST}}}")


def may_be_parted(word: str) -> bool:
    """Return whether a word may go over the end of a line.

    >>> may_be_parted("vitrectomy"), may_be_parted("Hinterkapselruptur")
    (False, True)
    """
    return _LONG.search(word) is not None
