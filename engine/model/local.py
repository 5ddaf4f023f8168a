"""What a unit adds to a pathway: whom it calls, where things lie, what it chose, and why."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from chamberwise.engine.model.rule import RuleId
    from chamberwise.engine.model.step import PathwayId
    from chamberwise.engine.model.words import ActId, FindingId


@dataclass(frozen=True, slots=True)
class Phone:
    """How help is called: the number, its hours, and what is rung outside them."""

    number: str
    hours: str
    outside_hours: str = ""


@dataclass(frozen=True, slots=True)
class LocalPlace:
    """Where things lie; `walk` is how many seconds it takes to fetch something from there."""

    title: str
    walk: int


@dataclass(frozen=True, slots=True)
class Product:
    """What the unit uses for an item of the kit, where it lies, and how much is kept."""

    product: str
    place: str
    shelf: str = ""
    stock: str = ""


@dataclass(frozen=True, slots=True)
class Machine:
    """The unit's machine, and by act the name of the page or button that is meant."""

    title: str
    pages: Mapping[ActId, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class TimeTarget:
    """By when a step should be done, in seconds, and how the unit came to that."""

    within: int
    method: str


@dataclass(frozen=True, slots=True)
class SwitchedOff:
    """A safety rule that does not bind the unit: who decided so, why, and when."""

    by: str
    because: str
    on: date


@dataclass(frozen=True, slots=True)
class Local:
    """A unit's sheet over one pathway, but for what it changes: that stands in the pathway."""

    id: str
    unit: str
    over: PathwayId
    base_edition: str
    base_digest: str
    covers: tuple[PathwayId, ...]
    """The pathway and those that it hands over to."""
    change: str = ""
    """Why this edition was made, in a line."""
    phones: Mapping[ActId, Phone] = field(default_factory=dict)
    places: Mapping[str, LocalPlace] = field(default_factory=dict)
    products: Mapping[str, Product] = field(default_factory=dict)
    machine: Machine | None = None
    reasons: Mapping[FindingId, str] = field(default_factory=dict)
    """Why the unit chose as it did, by choice."""
    targets: Mapping[str, TimeTarget] = field(default_factory=dict)
    """By pathway and step, as `pathway/step`."""
    switched_off: Mapping[RuleId, SwitchedOff] = field(default_factory=dict)
    translated: str = ""
    """The digest of what it says in other languages; empty where it says nothing."""
