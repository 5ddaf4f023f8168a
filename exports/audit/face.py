"""The heights of letters that the audit reckons with."""

from __future__ import annotations

from chamberwise.exports.legibility.angle import CAP_HEIGHT, MM_PER_POINT, read_from, x_height

__all__ = ["cap_height", "read_from", "x_height"]


def cap_height(size: float) -> float:
    """Return the height of capitals in millimetres; the same in every cut."""
    return size * CAP_HEIGHT * MM_PER_POINT
