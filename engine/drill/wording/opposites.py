"""Words that stand opposite each other, and things that are not each other, as stems."""

from __future__ import annotations

from collections.abc import Set

from chamberwise.engine.drill.wording.stems import stem


def _stems(words: str) -> frozenset[str]:
    return frozenset(map(stem, words.split()))


_PAIRS = tuple(
    (_stems(one), _stems(other))
    for one, other in (
        ("in", "out"),
        ("insert introduce enter", "remove withdraw extract exit out"),
        ("up raise increase high higher more", "down lower reduce decrease low less"),
        ("on", "off"),
        ("open", "close closed shut"),
        ("single planned one", "three"),
        ("keep leave hold stay remain", "take pull withdraw remove extract retract exit chase"),
        ("start continue carry", "off"),
        ("bag", "sulcus"),
        ("front", "behind posterior back"),
        ("hard", "soft"),
    )
)
THINGS = _stems(
    "lens viscoelastic tip vitrector infusion wound tear piece cortex iris cornea patient speculum"
    " suture triamcinolone power"
)

WAYS = _stems("in out up down off on back behind forward under below")
"""A way that one names and the other does not makes another act of it."""


def stands(tokens: Set[str]) -> int:
    """Return on which side of each pair some stems stand alone, one bit a side."""
    bits = 0
    for place, (one, other) in enumerate(_PAIRS):
        here, there = not tokens.isdisjoint(one), not tokens.isdisjoint(other)
        if here is not there:
            bits |= 1 << (2 * place + there)
    return bits


def against(bits: int) -> int:
    """Return the sides opposite to some.

    >>> against(stands({"bag"})) == stands({"sulcu"})
    True
    """
    even = int("01" * len(_PAIRS), 2)
    return (bits & even) << 1 | (bits >> 1) & even
