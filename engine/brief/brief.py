"""The brief of a list: what stands on the sheet, before anybody lays it out."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from chamberwise.engine.brief.case import Head
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _


class Position(StrEnum):
    """Where a backup lens can lie: in the sulcus with its optic captured, in the sulcus, or in
    front of the iris or fixed to it.
    """

    CAPTURED = N_("captured")
    SULCUS = N_("sulcus")
    IN_FRONT = N_("at the iris")

    @property
    def told(self) -> str:
        """The position in the language that is spoken."""
        return _(self.value)


@dataclass(frozen=True, slots=True)
class OnTheShelf:
    """A stocked power near the exact one, how many there are, and what it would leave."""

    power: Decimal
    count: int
    leaves: str


@dataclass(frozen=True, slots=True)
class Backup:
    """A backup lens in one position: the exact power, how it was come by, and the nearest ones.

    `beside` shows other figures for it; `refused` says why there is none.
    """

    position: Position
    model: str
    title: str
    exact: Decimal | None
    way: str
    shelf: tuple[OnTheShelf, ...]
    beside: str = ""
    refused: str = ""

    @property
    def is_missing(self) -> bool:
        """Whether nothing on the shelf lies within half a dioptre of the exact power."""
        if self.exact is None:
            return True
        return not any(abs(each.power - self.exact) <= NEAR for each in self.shelf)


NEAR = Decimal("0.5")
"""Dioptres from the exact power within which a lens on the shelf counts as there."""


@dataclass(frozen=True, slots=True)
class Risk:
    """The chance of rupture from low to high in per cent, models of points, and what is open."""

    low: Decimal
    high: Decimal
    points: tuple[str, ...]
    open: str


@dataclass(frozen=True, slots=True)
class CaseBrief:
    """What the team hears of one case."""

    label: str
    eye: str
    anaesthesia: str
    risk: Risk | None
    ready: tuple[str, ...]
    planned: str
    backups: tuple[Backup, ...]
    ceiling: str
    to_do: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Brief:
    """The whole list. The chance is that of at least one rupture, low and high, in per cent."""

    head: Head
    unit: str
    counted: str
    cases: tuple[CaseBrief, ...]
    chance: tuple[Decimal, Decimal] | None
    to_do: tuple[str, ...]
