"""Days counted by hand (computed), over a leap day, a year's end and bank holidays."""

from __future__ import annotations

from datetime import date

import pytest
from chamberwise.engine.working.dates.moving import months_on
from chamberwise.engine.working.working import Working
from hypothesis import given
from hypothesis import strategies as some

from tests.conformance.working_out import refusals, work

LEAP = (
    ("1", "Sat 26 Feb 2028"),
    ("7", "Fri 3 Mar 2028"),
    ("14", "Fri 10 Mar 2028"),
    ("28", "Fri 24 Mar 2028"),
    ("42", "Fri 7 Apr 2028"),
    ("90", "Thu 25 May 2028"),
)
YEARS_END = (
    ("1", "Sat 25 Dec 2027"),
    ("7", "Fri 31 Dec 2027"),
    ("10", "Mon 3 Jan 2028"),
    ("42", "Fri 4 Feb 2028"),
    ("90", "Thu 23 Mar 2028"),
)


def own(operated: str, **typed: str) -> Working:
    return work("after-care-dates", after="own", operated=operated, **typed)


def days(found: Working) -> list[date | None]:
    return [each.day for each in found.results]


@pytest.mark.parametrize(
    ("operated", "day", "told"),
    [("2028-02-25", *row) for row in LEAP] + [("2027-12-24", *row) for row in YEARS_END],
)
def test_days_are_counted_through(operated: str, day: str, told: str) -> None:
    (found,) = own(operated, urgent_days=day, holidays="none").results
    assert found.shown == f"{told}, day {day}"


def test_an_urgent_review_stays_or_goes_earlier() -> None:
    stays = own("2027-12-24", urgent_days="1 3")
    assert days(stays) == [date(2027, 12, 25), date(2027, 12, 27)]
    assert "needs a slot" in stays.tables[0].rows[0][3]
    earlier = own("2027-12-20", urgent_days="8", urgent_on_closed_day="earlier")
    assert days(earlier) == [date(2027, 12, 24)]


def test_a_routine_review_goes_to_the_next_working_day() -> None:
    """27 and 28 December 2027 stand in for Christmas in England."""
    assert days(own("2027-12-18", routine_days="7")) == [date(2027, 12, 29)]
    closed = own("2027-12-18", routine_days="7", closed="2027-12-29 2027-12-30")
    assert days(closed) == [date(2027, 12, 31)]


def test_a_routine_review_never_passes_its_latest_day() -> None:
    shut = " ".join(f"2028-03-{day:02}" for day in range(3, 14))
    found = own("2028-02-25", routine_days="7", closed=shut)
    assert days(found) == [date(2028, 3, 2)]
    assert "no working day up to the latest" in found.tables[0].rows[0][3]


@pytest.mark.parametrize(
    ("day", "months", "expected"),
    [
        (date(2027, 1, 31), 1, date(2027, 2, 28)),
        (date(2028, 1, 31), 1, date(2028, 2, 29)),
        (date(2027, 12, 31), 2, date(2028, 2, 29)),
        (date(2027, 6, 15), 18, date(2028, 12, 15)),
    ],
)
def test_months_end_on_the_last_day_they_have(day: date, months: int, expected: date) -> None:
    assert months_on(day, months) == expected


def test_holidays_are_those_of_the_part_of_the_country() -> None:
    """2 January is a holiday in Scotland and none in England."""
    england = own("2026-12-26", routine_days="9", holidays="GB-ENG")
    scotland = own("2026-12-26", routine_days="9", holidays="GB-SCT")
    assert days(england) == [date(2027, 1, 4)] != days(scotland)


@given(some.dates(date(2020, 1, 1), date(2035, 12, 31)), some.integers(1, 60))
def test_a_review_is_never_before_the_operation_nor_late(operated: date, day: int) -> None:
    urgent, routine = (
        own(operated.isoformat(), holidays="none", **{kind: str(day)}).results[0].day
        for kind in ("urgent_days", "routine_days")
    )
    assert urgent is not None
    assert routine is not None
    assert (urgent - operated).days == day
    assert 0 <= (routine - operated).days - day <= 2


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ({"operated": "25/02/2028"}, "no day of the calendar"),
        ({"operated": "2027-02-29"}, "no day of the calendar"),
        ({"operated": "9999-12-31"}, "lies in the year 9999"),
        ({"operated": "0203-02-25"}, "lies in the year 203"),
        ({"holidays": "UK"}, "no country"),
        ({"holidays": "GB-XYZ"}, "no part of GB"),
        ({"closed": "tomorrow"}, "no day of the calendar"),
        ({"urgent_days": "1"}, "only with it"),
        ({"after": "own"}, "only with it"),
        ({"after": "own", "urgent_days": "1.5"}, "days and months are whole"),
    ],
)
def test_what_cannot_be_counted_is_refused(typed: dict[str, str], why: str) -> None:
    assert why in refusals("after-care-dates", **typed)
