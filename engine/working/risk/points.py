"""Published models that add points; what is unknown may or may not add its points."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from decimal import Decimal

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.form import UNKNOWN
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.risk import factors
from chamberwise.engine.working.risk.factors import NO, YES

MUHTASEB_GROUPS = ((0, 0, "1.55"), (1, 2, "1.57"), (3, 5, "4.96"), (6, 99, "8"))
"""Points from, to, and rupture in per cent in that group of 2004."""
OLD = Decimal(88)


@dataclass(frozen=True, slots=True)
class Points:
    """The fewest and the most points, and what was never asked."""

    low: int
    high: int
    unknown: tuple[str, ...]

    @property
    def told(self) -> str:
        """The points in words."""
        return (
            f"{self.low}"
            if self.low == self.high
            else _("{low} to {high}").format(low=self.low, high=self.high)
        )


@dataclass(frozen=True, slots=True)
class Item:
    """Points for something: for a word answered, from the fewest to the most where unknown."""

    name: str
    low: int
    high: int
    unknown: bool


def muhtaseb(given: Given) -> Points:
    """Return the points of Muhtaseb 2004."""
    single = (
        factors.PREVIOUS_VITRECTOMY,
        factors.CORNEAL_SCAR,
        factors.TINY_PUPIL,
        factors.SHALLOW,
        factors.AMETROPIA,
        factors.PLAQUE,
        factors.POLAR,
        factors.OTHER_RISK,
    )
    items = [_yes(given, each.name, 1) for each in single]
    items.append(_item("age", _answer(given, "age", lambda age: age > OLD), 1))
    items.append(_item("nucleus", _dense(given), 3))
    items.append(_yes(given, "pseudoexfoliation", 3))
    items.append(_yes(given, "phacodonesis", 3))
    return _sum(items)


def groups(points: Points) -> tuple[str, ...]:
    """Return the published rates of rupture for the groups that the points may lie in."""
    return tuple(
        rate for low, high, rate in MUHTASEB_GROUPS if low <= points.high and points.low <= high
    )


def habib(given: Given) -> Points:
    """Return the difficulty points of Habib 2006, which carry no probability."""
    single = (
        factors.CANNOT_LIE_FLAT,
        factors.ANXIETY,
        factors.TREMOR,
        factors.CLOSURE,
        factors.FELLOW,
        factors.PREVIOUS_VITRECTOMY,
        factors.CORNEAL_SCAR,
        factors.SHALLOW,
        factors.PSEUDOEXFOLIATION,
        factors.PHACODONESIS,
    )
    items = [_yes(given, each.name, 1) for each in single]
    pupil = given.word("pupil")
    poor = UNKNOWN if pupil == UNKNOWN else YES if pupil == "small" else NO
    items.append(_item("pupil", poor, 1))
    items.append(_item("axial-length", _answer(given, "axial-length", _extreme), 1))
    items.append(_density(given))
    return _sum(items)


def _extreme(length: Decimal) -> bool:
    return length > 27 or length < 20


def _density(given: Given) -> Item:
    points = {"clear": 0, "grade-1": 1, "grade-2": 1, "grade-3": 2, "brunescent-or-white": 3}
    said = given.word("nucleus")
    low, high = (points[said], points[said]) if said in points else (0, 3)
    return Item("nucleus", low, high, said not in points)


def _dense(given: Given) -> str:
    said = given.word("nucleus")
    return UNKNOWN if said == UNKNOWN else YES if said == "brunescent-or-white" else NO


def _answer(given: Given, name: str, holds: Callable[[Decimal], bool]) -> str:
    if name not in given:
        return UNKNOWN
    return YES if holds(given.number(name)) else NO


def _yes(given: Given, name: str, points: int) -> Item:
    return _item(name, given.word(name), points)


def _item(name: str, said: str, points: int) -> Item:
    low = points if said == YES else 0
    high = 0 if said == NO else points
    return Item(name, low, high, said == UNKNOWN)


def _sum(items: list[Item]) -> Points:
    return Points(
        sum(each.low for each in items), sum(each.high for each in items), tuple(_unknown(items))
    )


def _unknown(items: list[Item]) -> Iterator[str]:
    yield from (each.name for each in items if each.unknown)
