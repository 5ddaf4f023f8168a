"""Characters that no text may hold: they cannot be seen, or make a line read as another."""

from __future__ import annotations

import re

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_RANGES = {
    N_("control character"): "\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f",
    N_("line separator"): "\x85\u2028\u2029",
    N_("character that turns the reading direction"): "\u202a-\u202e\u2066-\u2069",
    N_("byte order mark"): "\ufeff",
    N_("character without width"): "\u00ad\u200b\u2060-\u2064",
    N_("character that is none"): "\ud800-\udfff\ufffe\uffff",
}
_HIDDEN = re.compile(f"[{''.join(_RANGES.values())}]")


def first_hidden(text: str) -> tuple[int, str] | None:
    """Return where the first such character stands and what it is, e.g. `control character U+0007`.

    Tabs and the ends of lines are none.
    """
    found = None if text.isprintable() else _HIDDEN.search(text)
    if found is None:
        return None
    name = next(name for name, each in _RANGES.items() if re.match(f"[{each}]", found.group()))
    return found.start(), f"{_(name)} U+{ord(found.group()):04X}"


def without_hidden(text: str) -> str:
    """Return a text with a replacement character for each, and for a return; safe to be shown."""
    if text.isprintable():
        return text
    return _HIDDEN.sub("\ufffd", text).replace("\r", "\ufffd")


def in_short(text: str, most: int = 40) -> str:
    """Return a text on one line, no longer than `most`, with nothing hidden in it."""
    line = without_hidden(" ".join(text[: 4 * most].split()))
    return line if len(line) <= most else f"{line[: most - 3]}..."
