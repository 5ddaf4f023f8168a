"""What is declared of a sheet before it is audited."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from chamberwise.exports.control.content import Control
from chamberwise.exports.legibility.angle import LEAST_ANGLE
from chamberwise.exports.paper.sizes import Sized
from chamberwise.exports.printing.kind import AnyKind, Kind


class Lighting(StrEnum):
    """How light the room is in which the sheet is read."""

    BRIGHT = "bright"
    DIM = "dim"

    @property
    def least_angle(self) -> float:
        """The least angle of small letters, in minutes of arc, at the distance that is printed."""
        return DIM_ANGLE if self is Lighting.DIM else LEAST_ANGLE


DIM_ANGLE = 18.0
"""Small letters whose capitals fill 24 minutes of arc."""


@dataclass(frozen=True, slots=True)
class Distances:
    """From how far each tier is read, in metres."""

    glance: float
    act: float
    refer: float = 0.5


IN_THE_HAND = Distances(0.4, 0.4)
ON_THE_WALL = Distances(3.0, 1.5)


def usual_distances(kind: AnyKind) -> Distances:
    """Return what a tier is read from when the sheet itself says nothing."""
    return ON_THE_WALL if kind is Kind.WALL_CHART else IN_THE_HAND


@dataclass(frozen=True, slots=True)
class Tiling:
    """How a large sheet was cut into tiles: rows, columns, and the overlap in millimetres."""

    rows: int
    columns: int
    overlap: float


@dataclass(frozen=True, slots=True)
class Waiver:
    """A rule that may be broken on this sheet, and why. A waiver without a reason is void."""

    rule: str
    reason: str


@dataclass(frozen=True, slots=True)
class Terms:
    """What the sheet is held to. `distance` in metres is from where it was asked to be read."""

    kind: AnyKind
    sized: Sized
    control: Control | None = None
    """What the foot has to say; none for papers that nobody approves."""
    distance: float | None = None
    lighting: Lighting = Lighting.BRIGHT
    waivers: tuple[Waiver, ...] = ()
    tiling: Tiling | None = None
