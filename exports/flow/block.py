"""What flows: blocks of text in groups that stay together."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import NamedTuple

from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Item, Role, Run, Style, Tier, Weight


class Area(NamedTuple):
    """A place to fill, in millimetres."""

    x: float
    y: float
    width: float
    height: float

    def inside(self, padding: float) -> Area:
        """Return the area less a padding on every side."""
        twice = 2 * padding
        return Area(self.x + padding, self.y + padding, self.width - twice, self.height - twice)


@dataclass(frozen=True, slots=True)
class Block:
    """Text across its column. `lead` hangs in the indent; `to_write` leaves a ruled line behind.

    `indent` and `before`, the gap above, are in millimetres.
    """

    runs: tuple[Run, ...]
    style: Style
    role: Role = Role.LINE
    of: str = ""
    indent: float = 0.0
    before: float = 0.0
    lead: str = ""
    to_write: bool = False
    tier: Tier = Tier.ACT


@dataclass(frozen=True, slots=True)
class Panel:
    """The box round a group."""

    border: Ink = Ink.BLACK
    ground: Ink = Ink.WHITE
    weight: float = 0.35
    padding: float = 2.0


@dataclass(frozen=True, slots=True)
class Group:
    """Blocks that stay together, the gap after them, and whether the next group stays too."""

    blocks: tuple[Block, ...]
    after: float = 2.0
    keeps_next: bool = False
    panel: Panel | None = None


@dataclass(frozen=True, slots=True)
class Laid:
    """Items placed from their own top left corner, and the room they take."""

    items: tuple[Item, ...]
    height: float
    after: float = 0.0
    keeps_next: bool = False


def plain(text: str, weight: Weight = Weight.REGULAR) -> tuple[Run, ...]:
    """Return a text as one run."""
    return (Run(text, weight),)


def together(groups: Iterable[Group], after: float = 2.0) -> Group:
    """Return the blocks of some groups as one group."""
    return Group(tuple(block for group in groups for block in group.blocks), after)
