"""From how far a hand-held sheet is read, as it is printed at its foot."""

from __future__ import annotations

from collections.abc import Iterable
from math import floor

from chamberwise.exports.legibility.angle import read_from
from chamberwise.exports.paper.sheet import Item, Role, Text

REMARKS = frozenset({Role.NOTE, Role.FOOTER, Role.MARK})


def far(items: Iterable[Item]) -> str:
    """Return the distance at which the smallest text, remarks aside, is read; rounded down."""
    sizes = [
        each.style.size for each in items if isinstance(each, Text) and each.role not in REMARKS
    ]
    if not sizes:
        return ""
    metres = floor(read_from(min(sizes)) * 100) / 100
    return f"Read from up to {metres:.2f}\u00a0m."
