"""Paper sizes of ISO 216, A series, in millimetres."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple


class Paper(StrEnum):
    """A trimmed size of ISO 216."""

    A4 = "A4"
    A3 = "A3"
    A2 = "A2"
    A1 = "A1"


class Turn(StrEnum):
    """Which way round a sheet hangs."""

    PORTRAIT = "portrait"
    LANDSCAPE = "landscape"


_WIDTH_AND_HEIGHT = {
    Paper.A4: (210, 297),
    Paper.A3: (297, 420),
    Paper.A2: (420, 594),
    Paper.A1: (594, 841),
}


class Format(NamedTuple):
    """Width and height of a page, in millimetres."""

    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Sized:
    """A paper and which way round it is used."""

    paper: Paper
    turn: Turn = Turn.PORTRAIT

    @property
    def format(self) -> Format:
        """Width and height as it hangs, in millimetres.

        >>> Sized(Paper.A3, Turn.LANDSCAPE).format
        Format(width=420, height=297)
        """
        width, height = _WIDTH_AND_HEIGHT[self.paper]
        return Format(width, height) if self.turn is Turn.PORTRAIT else Format(height, width)

    def __str__(self) -> str:
        return f"{self.paper} {self.turn}"


def larger(paper: Paper) -> Paper | None:
    """Return the next larger size; `None` above A1."""
    sizes = list(Paper)
    place = sizes.index(paper) + 1
    return sizes[place] if place < len(sizes) else None
