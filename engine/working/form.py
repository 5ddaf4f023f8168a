"""What a calculation is: what it takes, from where, what it does not know, and how it is worked."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from functools import cache
from typing import TYPE_CHECKING

from chamberwise.engine.language.texts import N_
from chamberwise.engine.model.words import Source

if TYPE_CHECKING:
    from chamberwise.engine.working.given import Given
    from chamberwise.engine.working.sheet import Sheet

STANDING = (
    N_("Check by hand against the unit's own biometry and formulary."),
    N_("Follow local protocol. For rehearsal and preparation, never live care."),
)
"""What every working says."""

UNKNOWN = "unknown"


class Kind(StrEnum):
    """What an input takes."""

    NUMBER = "number"
    SEVERAL = "numbers"
    WORD = "word"
    DATE = "date"
    TEXT = "text"


@dataclass(frozen=True, slots=True)
class Range:
    """From where to where a number may lie, both ends included."""

    low: Decimal
    high: Decimal

    def __contains__(self, value: Decimal) -> bool:
        return self.low <= value <= self.high


def meaning_of(choices: Iterable[tuple[str, str]]) -> str:
    """Return what each word means, in one line."""
    return "; ".join(f"{word}: {title}" for word, title in choices)


def between(low: str, high: str) -> Range:
    """Return a range from its ends as they are written."""
    return Range(Decimal(low), Decimal(high))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Input:
    """One thing a calculation takes.

    `also` names other units in which it is written; a number without a unit is taken only where,
    read in none of them, it could lie in the hard range (`bare`). `outside` says what to do about
    a number outside the hard range, `slip` what one in another range is likely to be. `given` is
    what is taken where nothing is said.
    A curvature is a power in dioptres that may also be said as a radius in millimetres.
    """

    name: str
    meaning: str
    example: str
    symbol: str = ""
    kind: Kind = Kind.NUMBER
    unit: str = ""
    also: tuple[str, ...] = ()
    is_curvature: bool = False
    bare: bool = True
    hard: Range | None = None
    soft: Range | None = None
    outside: str = ""
    slip: tuple[Range, str] | None = None
    words: tuple[str, ...] = ()
    required: bool = True
    given: str = ""
    choices: tuple[tuple[str, str], ...] = ()
    """What each word means, where that is the whole `meaning`."""

    @property
    def names(self) -> tuple[str, ...]:
        """The names under which it may be given."""
        return (self.name, self.symbol) if self.symbol else (self.name,)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Calculation:
    """A calculation. `work` writes on a sheet; it raises `RefusedError` rather than guess.

    There is one of each, so two are the same where they are one.
    """

    name: str
    title: str
    purpose: str
    inputs: tuple[Input, ...]
    sources: tuple[Source, ...]
    limits: tuple[str, ...]
    cautions: tuple[str, ...]
    work: Callable[[Given, Sheet], None]
    shown: tuple[str, ...] = ()
    """Inputs that stand in the example beside those always needed."""

    def input(self, name: str) -> Input | None:
        """Return the input of a name or symbol, whatever its case."""
        return _by_name(self).get(name.casefold())


@cache
def _by_name(of: Calculation) -> Mapping[str, Input]:
    return {name.casefold(): each for each in of.inputs for name in each.names}
