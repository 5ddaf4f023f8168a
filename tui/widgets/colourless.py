"""No colour at all: the stock filters leave greys or default-colour codes behind."""

from __future__ import annotations

from functools import lru_cache

from rich.segment import Segment
from rich.style import Style
from textual.color import Color
from textual.filter import LineFilter

ATTRIBUTES = ("bold", "italic", "underline", "reverse", "strike")


@lru_cache(maxsize=1024)
def without_colour(style: Style) -> Style:
    """Return a style with its attributes and no colour codes; a coloured ground is reversed."""
    kept = {name: True for name in ATTRIBUTES if getattr(style, name)}
    return Style(**kept) + Style(meta=style.meta)  # type: ignore[arg-type]


class Colourless(LineFilter):
    """Takes colours out of every segment."""

    def apply(self, segments: list[Segment], background: Color) -> list[Segment]:
        """Return the segments without colour."""
        return [
            Segment(text, without_colour(style) if style else None, control)
            for text, style, control in segments
        ]
