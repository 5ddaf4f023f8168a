"""A finished working: what was given, line by line what came of it, and what to make of it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from chamberwise.engine.model.words import Source


@dataclass(frozen=True, slots=True)
class Told:
    """An input as it was taken; `assumed` where nobody said it."""

    name: str
    symbol: str
    meaning: str
    value: str
    assumed: bool = False


@dataclass(frozen=True, slots=True)
class Line:
    """One line of working: the formula in symbols, with numbers, and what it comes to."""

    symbol: str
    title: str
    formula: str
    numbers: str
    value: Decimal
    shown: str
    unit: str


@dataclass(frozen=True, slots=True)
class Heading:
    """The head of a part of the working."""

    title: str


@dataclass(frozen=True, slots=True)
class Step:
    """A sentence of the working: a case that was met, or a step to read back."""

    text: str


@dataclass(frozen=True, slots=True)
class Result:
    """A figure asked for, or words where the answer is no figure."""

    name: str
    title: str
    value: Decimal | None
    shown: str
    day: date | None = None


@dataclass(frozen=True, slots=True)
class Table:
    """Figures side by side."""

    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    keys: tuple[str, ...]
    """The heads as programs know them."""


@dataclass(frozen=True, slots=True)
class Working:
    """Everything a calculation says."""

    name: str
    title: str
    given: tuple[Told, ...]
    lines: tuple[Line | Heading | Step, ...]
    results: tuple[Result, ...]
    tables: tuple[Table, ...]
    remarks: tuple[str, ...]
    limits: tuple[str, ...]
    cautions: tuple[str, ...]
    sources: tuple[Source, ...]

    def result(self, name: str) -> Decimal:
        """Return the figure of a name. Raises `KeyError` where it has none."""
        for each in self.results:
            if each.name == name and each.value is not None:
                return each.value
        raise KeyError(name)
