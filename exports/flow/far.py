"""From how far a hand-held sheet is read, as it is printed at its foot."""

from __future__ import annotations

from collections.abc import Iterable
from math import floor

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.legibility.angle import read_from
from chamberwise.exports.paper.sheet import Item, Role, Text, Tier

REMARKS = frozenset({Role.NOTE, Role.FOOTER, Role.MARK})

HAIR = 1e-6
"""Of a centimetre: type made for 1.5 m is told as such, however its size was rounded."""


def far(items: Iterable[Item]) -> str:
    """Return the distance at which the smallest text, remarks aside, is read; rounded down."""
    sizes = [
        each.style.size
        for each in items
        if isinstance(each, Text) and each.role not in REMARKS and each.tier is not Tier.REFER
    ]
    if not sizes:
        return ""
    return far_of(min(sizes))


def far_of(size: float) -> str:
    """Return from how far type of a size in points is read."""
    metres = floor(read_from(size) * 100 + HAIR) / 100
    return _("Read from up to {metres}\u00a0m.").format(metres=decimal(f"{metres:.2f}"))
