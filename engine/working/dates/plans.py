"""Which reviews follow what; all of it common practice, to be replaced by the unit's own rule."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from chamberwise.engine.working.digits import plain


@dataclass(frozen=True, slots=True)
class Visit:
    """A review: the day aimed at, the latest day, and whether it can wait for a working day.

    With `months` it is that many months on instead.
    """

    title: str
    day: int
    latest: int
    urgent: bool = False
    months: int = 0

    @property
    def told(self) -> str:
        """When it is, counted from the day of the operation."""
        if self.months:
            return f"{self.months} month{'s' if self.months > 1 else ''}"
        if self.latest > self.day:
            return f"day {self.day} to {self.latest}"
        return f"day {self.day}"


@dataclass(frozen=True, slots=True)
class Plan:
    """The reviews after something, and what to know of them."""

    visits: tuple[Visit, ...]
    remarks: tuple[str, ...] = ()


PLANS = {
    "vitreous-loss": Plan(
        (
            Visit("pressure", 1, 1, urgent=True),
            Visit("review", 7, 10),
            Visit("dilated fundus and OCT", 28, 42),
        ),
        (
            "Where the pressure is measured the same day, it is after 4 to 6 hours.",
            "The warning of detachment is given in writing and holds for life.",
        ),
    ),
    "retained-fragment": Plan(
        (
            Visit("vitreoretinal review", 1, 3, urgent=True),
            Visit("vitrectomy, planned by then", 14, 14, urgent=True),
        ),
        ("Each further week raised the odds of poor sight 1.13 times (Vanner 2011, read).",),
    ),
    "suprachoroidal-bleed": Plan(
        (
            Visit("review", 1, 1, urgent=True),
            Visit("B-scan", 7, 7, urgent=True),
            Visit("decision on drainage", 7, 14, urgent=True),
        ),
    ),
    "descemet-detachment": Plan(
        (
            Visit("review", 1, 1, urgent=True),
            Visit("review", 3, 5, urgent=True),
            Visit("review", 7, 10),
            Visit("review", 14, 17),
        ),
        ("It goes on weekly while the membrane is off.",),
    ),
    "gas-in-chamber": Plan(
        (Visit("review", 1, 1, urgent=True), Visit("no flight, no nitrous oxide until", 14, 99)),
        ("The eye is looked at after 1 to 2 hours on the day itself as well.",),
    ),
    "corneal-suture": Plan((Visit("suture, by topography from", 28, 84),)),
    "endophthalmitis": Plan(
        (
            Visit("review", 1, 1, urgent=True),
            Visit("decision on a second injection", 2, 2, urgent=True),
        ),
        ("It is seen daily; the decision falls at 36 to 60 hours.",),
    ),
    "retrobulbar-bleed": Plan(
        (Visit("review", 1, 1, urgent=True), Visit("operation again, from", 28, 42)),
        ("The eye is felt every hour until it is soft.",),
    ),
}
"""By what happened. Days are calendar days; day 0 is the operation."""

SLACK = 7
"""Days by which a routine review of the unit's own rule may move at most."""


def own_plan(
    urgent: tuple[Decimal, ...], routine: tuple[Decimal, ...], months: tuple[Decimal, ...]
) -> Plan:
    """Return the unit's own rule as a plan, in the order of days."""
    visits = sorted(_visits(urgent, routine), key=lambda each: each.day)
    return Plan(
        (*visits, *(Visit(_named(each, "month"), 0, 0, months=int(each)) for each in months))
    )


def _visits(urgent: tuple[Decimal, ...], routine: tuple[Decimal, ...]) -> Iterator[Visit]:
    for each in urgent:
        yield Visit(f"urgent review, {_named(each, 'day')}", int(each), int(each), urgent=True)
    for each in routine:
        yield Visit(f"routine review, {_named(each, 'day')}", int(each), int(each) + SLACK)


def _named(number: Decimal, unit: str) -> str:
    return f"{unit} {plain(number)}"
