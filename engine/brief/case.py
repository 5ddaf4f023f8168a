"""A list as it was read: the cases, what was written of each, and the head of the list."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True, slots=True)
class Case:
    """One case by its label, and what was written of it by field."""

    label: str
    written: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Head:
    """Who reads aloud, who takes over, the word that stops everything, the day; empty if unset."""

    title: str = ""
    day: str = ""
    reader: str = ""
    takes_over: str = ""
    stop_word: str = ""


@dataclass(frozen=True, slots=True)
class CaseList:
    """The cases of a day in their order."""

    head: Head
    cases: tuple[Case, ...]


@dataclass(frozen=True, slots=True)
class StockedLens:
    """A lens model on the shelf: how it is built, its A-constant, and how many of each power."""

    name: str
    title: str
    kind: str
    a_constant: Decimal
    counts: Mapping[Decimal, int]

    @property
    def powers(self) -> tuple[Decimal, ...]:
        """The powers of which at least one is there."""
        return tuple(power for power, count in self.counts.items() if count > 0)


@dataclass(frozen=True, slots=True)
class Stock:
    """The shelf of a unit, when it was counted, and what the unit has chosen."""

    unit: str
    counted: str
    lenses: tuple[StockedLens, ...]
    head: Head
    sulcus: str = ""
    lidocaine: str = "lower"

    def lens(self, name: str) -> StockedLens | None:
        """Return a model by its name."""
        return next((each for each in self.lenses if each.name == name), None)
