"""From a count of days to a day on which somebody is there."""

from __future__ import annotations

from calendar import monthrange
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, timedelta

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.dates.plans import Visit
from chamberwise.engine.working.scalars import told_day

Closed = Callable[[date], str]
"""Why a day is closed; an empty text where it is a working day."""
ONE = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Moved:
    """The day counted, the day it went to, how many days that is on, and what to know."""

    counted: date
    day: date
    count: int
    remark: str


def months_on(day: date, months: int) -> date:
    """Return the same day some months on, or the last of that month where it has none.

    >>> months_on(date(2027, 1, 31), 1)
    datetime.date(2027, 2, 28)
    """
    years, month = divmod(day.month - 1 + months, 12)
    year = day.year + years
    last = monthrange(year, month + 1)[1]
    return date(year, month + 1, min(day.day, last))


def moved(visit: Visit, operated: date, closed: Closed, earlier: bool) -> Moved:
    """Return the day of a visit: urgent ones stay or go earlier, routine ones go later."""
    counted = months_on(operated, visit.months) if visit.months else _on(operated, visit.day)
    why = closed(counted)
    if not why:
        return Moved(
            counted, counted, (counted - operated).days, _shortened(visit, operated, counted)
        )
    if visit.urgent:
        return _urgent(counted, operated, closed, why, earlier)
    latest = counted + 7 * ONE if visit.months else _on(operated, visit.latest)
    return _routine(counted, operated, latest, closed, why)


def _on(operated: date, days: int) -> date:
    return operated + timedelta(days=days)


def _shortened(visit: Visit, operated: date, counted: date) -> str:
    if visit.months and counted.day < operated.day:
        return _("the month is shorter, so it is its last day")
    return ""


def _urgent(counted: date, operated: date, closed: Closed, why: str, earlier: bool) -> Moved:
    before = counted - ONE
    while before > operated and closed(before):
        before -= ONE
    can_go = before > operated
    if earlier and can_go:
        remark = _("{why}: urgent, so it goes earlier").format(why=why)
        return Moved(counted, before, (before - operated).days, remark)
    if can_go:
        remark = _("{why}: urgent, so it stays and needs a slot, or earlier, on {before}").format(
            why=why, before=told_day(before)
        )
    else:
        remark = _("{why}: urgent, so it stays and needs a slot").format(why=why)
    return Moved(counted, counted, (counted - operated).days, remark)


def _routine(counted: date, operated: date, latest: date, closed: Closed, why: str) -> Moved:
    after = counted + ONE
    while after <= latest and closed(after):
        after += ONE
    if after <= latest:
        remark = _("{why}: routine, so it goes to the next working day").format(why=why)
        return Moved(counted, after, (after - operated).days, remark)
    before = counted - ONE
    while before > operated and closed(before):
        before -= ONE
    remark = _("{why}: no working day up to the latest, {latest}, so it goes earlier").format(
        why=why, latest=told_day(latest)
    )
    return Moved(counted, before, (before - operated).days, remark)
