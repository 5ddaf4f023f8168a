"""Visual angle of printed letters, by x-height.

`angle = 2 atan(height / 2 distance)`. 16 minutes of arc is the floor that ISO 9241 and NUREG-0700
give for characters; holding small letters to it, not capitals, is our stricter choice.
"""

from __future__ import annotations

from math import atan, degrees, radians, tan

MM_PER_POINT = 25.4 / 72
SMALL, LARGE = 14.0, 32.0
"""Points between which the typeface changes its cut, as its optical size axis tells it."""
X_SMALL, X_LARGE = 0.5459, 0.5156
"""Height of x in em up to the one and from the other size on; measured on the font file."""
CAP_HEIGHT = 0.727
LEAST_ANGLE = 16.0
"""Minutes of arc."""
ROUNDS = 20


def x_height(size: float) -> float:
    """Return the height of small letters in millimetres, of type in points as it is drawn.

    >>> round(x_height(72), 2)
    13.1
    """
    share = min(1.0, max(0.0, (size - SMALL) / (LARGE - SMALL)))
    return size * (X_SMALL + share * (X_LARGE - X_SMALL)) * MM_PER_POINT


def cap_height(size: float) -> float:
    """Return the height of capitals in millimetres; the same in every cut."""
    return size * CAP_HEIGHT * MM_PER_POINT


def angle(height: float, distance: float) -> float:
    """Return the angle in minutes of arc that a height fills at a distance, both in millimetres.

    >>> round(angle(4.654, 1000), 1)
    16.0
    """
    return degrees(2 * atan(height / (2 * distance))) * 60


def read_from(size: float, least: float = LEAST_ANGLE) -> float:
    """Return the distance in metres up to which type of a size in points fills the angle."""
    return x_height(size) / (2 * tan(radians(least / 120))) / 1000


def size_for(distance: float, least: float = LEAST_ANGLE) -> float:
    """Return the size in points that type needs at a distance in metres.

    >>> round(read_from(size_for(1.5)), 6)
    1.5
    """
    needed = distance * 1000 * 2 * tan(radians(least / 120))
    size = needed / X_SMALL / MM_PER_POINT
    for _ in range(ROUNDS):  # letters that grow get relatively smaller, so this settles
        size *= needed / x_height(size) if size else 1.0
    return size
