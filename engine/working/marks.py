"""How far a source was followed, told in a word."""

from __future__ import annotations

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import pgettext


def told_mark(mark: str) -> str:
    """Return a mark, or a mark with what is to be known of it, in the language that is spoken."""
    known = {
        "read": pgettext("mark", "read"),
        "memory": pgettext("mark", "memory"),
        "common practice": pgettext("mark", "common practice"),
        "derived": pgettext("mark", "derived"),
        "local": pgettext("mark", "local"),
    }
    return known.get(mark) or _(mark)
