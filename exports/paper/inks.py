"""The few inks a sheet is printed with, as sRGB.

Three of them carry meaning, always beside a word or a shape: danger with white on it, caution and
decision with black. The set was chosen by contrast (WCAG 2), by CIEDE2000 under simulated protan,
deutan and tritan vision, and by lightness, so that a grey print keeps them apart.
"""

from __future__ import annotations

from enum import StrEnum


class Ink(StrEnum):
    """A named colour."""

    BLACK = "#000000"
    WHITE = "#ffffff"
    GREY = "#595959"
    """For what may be read second: sources, footers, place marks. 7 to 1 on white."""
    RULE = "#8c8c8c"
    """Thin lines that carry no meaning."""
    WASH = "#f2f2f0"
    """The ground of a band."""
    DANGER = "#a31515"
    CAUTION = "#ffd400"
    DECISION = "#5b9bd5"
    DECISION_WASH = "#e4eff9"
    CLEAR = "none"
