"""Contrast by the formula of WCAG 2.2, also under coloured light."""

from __future__ import annotations

from functools import cache
from typing import TypeAlias

Light: TypeAlias = tuple[float, float, float]
DAYLIGHT: Light = (1.0, 1.0, 1.0)
TINTS: dict[str, Light] = {
    "green": (0.05, 1.0, 0.1),
    "blue": (0.05, 0.2, 1.0),
    "red": (1.0, 0.05, 0.02),
}
"""Factors on linear red, green and blue: ours, no published requirement."""


def channels(colour: str) -> tuple[int, int, int]:
    """Return red, green and blue of `#rrggbb`.

    >>> channels("#a31515")
    (163, 21, 21)
    """
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)


def linear(channel: int) -> float:
    """Return the light of an sRGB channel of 0 to 255, as a share of full light."""
    share = channel / 255
    return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)


@cache
def luminance(colour: str, light: Light = DAYLIGHT) -> float:
    """Return the relative luminance of `#rrggbb` under a light."""
    red, green, blue = (
        linear(channel) * factor for channel, factor in zip(channels(colour), light, strict=True)
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(first: str, second: str, light: Light = DAYLIGHT) -> float:
    """Return the contrast ratio of two colours, 1 to 21.

    >>> round(contrast("#767676", "#ffffff"), 2)
    4.54
    """
    low, high = sorted((luminance(first, light), luminance(second, light)))
    return (high + 0.05) / (low + 0.05)
