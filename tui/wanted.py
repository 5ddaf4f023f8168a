"""What somebody asked to have printed."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.kinds import ON_A4, usual
from chamberwise.exports.printing.order import Kind
from chamberwise.exports.printing.printing import Form

if TYPE_CHECKING:
    from chamberwise.exports.audit.terms import Waiver

PACK = "pack"


class UnusableOrderError(Exception):
    """It cannot be printed so; `args[0]` says why and what to do."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """What was asked for. `what` is a kind of sheet or the pack of all."""

    pathway: str
    what: str
    made: date
    form: Form = Form.PDF
    paper: Paper | None = None
    turn: Turn | None = None
    distance: float | None = None
    unit: str | None = None
    is_tiled: bool = False
    out: Path | None = None
    is_folder: bool = False
    overwrite: bool = False
    waivers: tuple[Waiver, ...] = ()
    is_reported: bool = False
    """Whether the audit is wanted of a long draft too; all else always has it."""

    @property
    def is_pack(self) -> bool:
        """Whether every kind is wanted."""
        return self.what == PACK

    def sized(self, kind: Kind) -> Sized:
        """Return the paper of a kind; in a pack, what was asked is meant of the wall chart."""
        usually = usual(kind)
        if kind in ON_A4 or (self.is_pack and kind is not Kind.WALL_CHART):
            return usually
        return Sized(self.paper or usually.paper, self.turn or usually.turn)

    @property
    def kinds(self) -> tuple[Kind, ...]:
        """The kinds asked for, whether or not the pathway has each of them."""
        return tuple(Kind) if self.is_pack else (Kind(self.what),)
