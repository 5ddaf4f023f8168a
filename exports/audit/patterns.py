"""What a text of the program looks like once it is printed, filled in with anything."""

from __future__ import annotations

import re
from string import Formatter


def pattern_of(text: str, **groups: str) -> re.Pattern[str]:
    """Return a text to be filled in as a pattern; `groups` says what may stand at a name.

    >>> bool(pattern_of("Page {page} of {pages}", page="[0-9]+").search("... page 2 of 7 ..."))
    True
    """
    parts = []
    for words, name, _spec, _conversion in Formatter().parse(text):
        parts.append(r"\s+".join(re.escape(each) for each in re.split(r"\s", words)))
        if name is not None:
            parts.append(f"({groups[name]})" if name in groups else "(?:.*?)")
    return re.compile("".join(parts), re.IGNORECASE)
