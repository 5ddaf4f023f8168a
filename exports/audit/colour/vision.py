"""How far apart two colours are, as seen with full and with lacking colour vision."""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from coloraide import Color


class Sight(NamedTuple):
    """A lacking cone and a published simulation of it, at full severity."""

    cone: str
    method: str

    def __str__(self) -> str:
        return f"{self.cone} ({self.method})"


RED_GREEN = tuple(
    Sight(cone, method)
    for cone in ("protan", "deutan")
    for method in ("brettel", "vienot", "machado")
)
BLUE_YELLOW = (Sight("tritan", "brettel"),)
"""Of the three methods only this one is fit for tritan vision."""


@cache
def difference(first: str, second: str, sight: Sight | None = None) -> float:
    """Return CIEDE2000 between two colours `#rrggbb`, through somebody's eyes."""
    one, two = _seen(first, sight), _seen(second, sight)
    return float(one.delta_e(two, method="2000"))


@cache
def chroma(colour: str) -> float:
    """Return how colourful a colour is, CIE Lab chroma; 0 for greys."""
    return float(Color(colour).convert("lch-d65")["c"])


@cache
def hue(colour: str) -> float:
    """Return its hue in degrees, CIE Lab."""
    return float(Color(colour).convert("lch-d65")["h"]) % 360


@cache
def _seen(colour: str, sight: Sight | None) -> Color:
    seen = Color(colour)
    if sight is None:
        return seen
    return seen.filter(sight.cone, method=sight.method, max_severity=1).clip("srgb")
