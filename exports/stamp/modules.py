"""The stamp as a square code for a camera: what it says can be typed as it stands."""

from __future__ import annotations

QUIET = 4
"""Modules of white around a QR code, as ISO/IEC 18004 asks for."""


def said(code: str) -> str:
    """Return what the square code says: in capitals, which take least room.

    >>> said("7QK2-M4XP-3")
    'CHAMBERWISE STAMP 7QK2-M4XP-3'
    """
    return f"chamberwise stamp {code}".upper()


def modules(code: str) -> tuple[str, ...]:
    """Return the rows of the square code, 1 for dark, quiet zone included."""
    import segno

    square = segno.make(said(code), error="q", micro=False, boost_error=True)
    return tuple(
        "".join("1" if dark else "0" for dark in row) for row in square.matrix_iter(border=QUIET)
    )
