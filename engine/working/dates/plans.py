"""Which reviews follow what; all of it common practice, to be replaced by the unit's own rule."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from chamberwise.engine.language.texts import N_, ngettext
from chamberwise.engine.language.texts import gettext as _
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
    told_by: str = ""
    """The number in the title, where it has one."""

    @property
    def name(self) -> str:
        """What it is."""
        return _(self.title).format(number=self.told_by)

    @property
    def told(self) -> str:
        """When it is, counted from the day of the operation."""
        if self.months:
            months = ngettext("{months} month", "{months} months", self.months)
            return months.format(months=self.months)
        if self.latest > self.day:
            return _("day {day} to {latest}").format(day=self.day, latest=self.latest)
        return _("day {day}").format(day=self.day)


@dataclass(frozen=True, slots=True)
class Plan:
    """The reviews after something, and what to know of them."""

    visits: tuple[Visit, ...]
    remarks: tuple[str, ...] = ()


PLANS = {
    "vitreous-loss": Plan(
        (
            Visit(N_("pressure"), 1, 1, urgent=True),
            Visit(N_("review"), 7, 10),
            Visit(N_("dilated fundus and OCT"), 28, 42),
        ),
        (
            N_("Where the pressure is measured the same day, it is after 4 to 6 hours."),
            N_("The warning of detachment is given in writing and holds for life."),
        ),
    ),
    "retained-fragment": Plan(
        (
            Visit(N_("vitreoretinal review"), 1, 3, urgent=True),
            Visit(N_("vitrectomy, planned by then"), 14, 14, urgent=True),
        ),
        (N_("Each further week raised the odds of poor sight 1.13 times (Vanner 2011, read)."),),
    ),
    "suprachoroidal-bleed": Plan(
        (
            Visit(N_("review"), 1, 1, urgent=True),
            Visit(N_("B-scan"), 7, 7, urgent=True),
            Visit(N_("decision on drainage"), 7, 14, urgent=True),
        ),
    ),
    "descemet-detachment": Plan(
        (
            Visit(N_("review"), 1, 1, urgent=True),
            Visit(N_("review"), 3, 5, urgent=True),
            Visit(N_("review"), 7, 10),
            Visit(N_("review"), 14, 17),
        ),
        (N_("It goes on weekly while the membrane is off."),),
    ),
    "gas-in-chamber": Plan(
        (
            Visit(N_("review"), 1, 1, urgent=True),
            Visit(N_("no flight, no nitrous oxide until"), 14, 99),
        ),
        (N_("The eye is looked at after 1 to 2 hours on the day itself as well."),),
    ),
    "corneal-suture": Plan((Visit(N_("suture, by topography from"), 28, 84),)),
    "endophthalmitis": Plan(
        (
            Visit(N_("review"), 1, 1, urgent=True),
            Visit(N_("decision on a second injection"), 2, 2, urgent=True),
        ),
        (N_("It is seen daily; the decision falls at 36 to 60 hours."),),
    ),
    "retrobulbar-bleed": Plan(
        (Visit(N_("review"), 1, 1, urgent=True), Visit(N_("operation again, from"), 28, 42)),
        (N_("The eye is felt every hour until it is soft."),),
    ),
}
"""By what happened. Days are calendar days; day 0 is the operation."""

OWN_URGENT = N_("urgent review, day {number}")
OWN_ROUTINE = N_("routine review, day {number}")
OWN_MONTH = N_("month {number}")
SLACK = 7
"""Days by which a routine review of the unit's own rule may move at most."""


def own_plan(
    urgent: tuple[Decimal, ...], routine: tuple[Decimal, ...], months: tuple[Decimal, ...]
) -> Plan:
    """Return the unit's own rule as a plan, in the order of days."""
    visits = sorted(_visits(urgent, routine), key=lambda each: each.day)
    later = (Visit(OWN_MONTH, 0, 0, months=int(each), told_by=plain(each)) for each in months)
    return Plan((*visits, *later))


def _visits(urgent: tuple[Decimal, ...], routine: tuple[Decimal, ...]) -> Iterator[Visit]:
    for each in urgent:
        day = int(each)
        yield Visit(OWN_URGENT, day, day, urgent=True, told_by=plain(each))
    for each in routine:
        day = int(each)
        yield Visit(OWN_ROUTINE, day, day + SLACK, told_by=plain(each))
