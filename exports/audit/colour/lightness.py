"""How light a colour is once its hue is gone."""

from __future__ import annotations

from chamberwise.exports.audit.colour.contrast import luminance

_BEND = 216 / 24389
_SLOPE = 24389 / 27


def lightness(colour: str) -> float:
    """Return CIE L* of `#rrggbb`, 0 to 100.

    >>> round(lightness("#9b2423"), 1)
    34.7
    """
    light = luminance(colour)
    return float(116 * light ** (1 / 3) - 16) if light > _BEND else _SLOPE * light
