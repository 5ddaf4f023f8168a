"""A finished PDF as it was read back, in millimetres from top left."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from zlib import decompress

from chamberwise.exports.audit.geometry import Box, Point


@dataclass(frozen=True, slots=True)
class Stretch:
    """Words set in one go: one font, one size, one ink."""

    text: str
    font: str
    size: float
    """Points, as it comes out on paper."""
    ink: str
    box: Box
    """What its letters cover."""
    origin: Point
    """Where its baseline begins."""
    turned: float
    """Degrees, clockwise."""
    slant: float
    """How far its letters lean, in em over one em."""
    order: int
    """Its place among all that is painted on the page."""


@dataclass(frozen=True, slots=True)
class Path:
    """A line or an area."""

    box: Box
    points: tuple[Point, ...]
    fill: str | None
    stroke: str | None
    weight: float
    order: int
    is_dashed: bool = False


@dataclass(frozen=True, slots=True)
class Typeface:
    """A font of the file."""

    name: str
    is_embedded: bool
    has_serifs: bool
    is_italic: bool


@dataclass(frozen=True, slots=True)
class Pixels:
    """All pixels of a page, as they are or squeezed: a file may have many pages."""

    kept: bytes
    is_squeezed: bool = False

    @property
    def opened(self) -> bytes:
        """Row by row, 0 black to 255."""
        return _opened(self.kept) if self.is_squeezed else self.kept


@dataclass(frozen=True, slots=True)
class Leaf:
    """One page by the first reader."""

    width: float
    height: float
    stretches: tuple[Stretch, ...]
    paths: tuple[Path, ...]
    pictures: int
    pixels: Pixels
    across: int
    """Pixels in a row."""

    @property
    def grey(self) -> bytes:
        """Its pixels row by row, 0 black to 255."""
        return self.pixels.opened

    @property
    def per_mm(self) -> float:
        """Pixels in a millimetre."""
        return self.across / self.width


@lru_cache(maxsize=2)
def _opened(squeezed: bytes) -> bytes:
    return decompress(squeezed)


@dataclass(frozen=True, slots=True)
class SecondLeaf:
    """One page by the second reader."""

    width: float
    height: float
    text: str
    sizes: frozenset[float]
    """Type sizes in points, to a tenth."""
    lost_glyphs: int
    """Glyphs that stand for no letter (.notdef)."""


@dataclass(frozen=True, slots=True)
class Told:
    """What the file says of itself."""

    language: str
    title: str
    shows_title: bool
    is_marked: bool
    has_structure: bool


@dataclass(frozen=True, slots=True)
class Printed:
    """A whole file, read twice."""

    leaves: tuple[Leaf, ...]
    seconds: tuple[SecondLeaf, ...]
    faces: tuple[Typeface, ...]
    told: Told
