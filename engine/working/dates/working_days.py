"""Which days are closed: weekends, bank holidays (by a library), and the unit's own."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from chamberwise.engine.working.dates.moving import Closed
from chamberwise.engine.working.refusal import refused

YEARS = 3
"""Years from that of the operation for which holidays are looked up."""
NONE = "none"
SATURDAY = 5


def holidays_of(code: str, year: int) -> Mapping[date, str]:
    """Return the bank holidays of a country or a part of it. Raises `RefusedError`.

    The code is that of ISO 3166, as `GB-ENG`; `none` looks at none.
    """
    if code.casefold() == NONE:
        return {}
    import holidays

    country, _, part = code.upper().partition("-")
    known = holidays.list_supported_countries(include_aliases=False)
    if country not in known:
        raise refused(
            "holidays",
            f"`{code}` is no country whose bank holidays are known",
            "It takes the code of ISO 3166.",
            "Write it as `holidays=GB-ENG`, or `holidays=none`.",
        )
    if part and part not in known[country]:
        parts = ", ".join(known[country]) or "none"
        raise refused(
            "holidays",
            f"`{part}` is no part of {country} with holidays of its own",
            f"Known are: {parts}.",
            f"Write one of them after the hyphen, or `holidays={country}`.",
        )
    found = holidays.country_holidays(
        country, subdiv=part or None, years=range(year, year + YEARS), language="en_GB"
    )
    return dict(sorted(found.items()))


def closed_days(holidays: Mapping[date, str], own: str) -> Closed:
    """Return why a day is closed. Raises `RefusedError` for an own day that is none."""
    own_days = {_day(each) for each in own.split()}

    def why(day: date) -> str:
        if day in holidays:
            return holidays[day]
        if day in own_days:
            return "closed here"
        return f"{day:%A}" if day.weekday() >= SATURDAY else ""

    return why


def _day(typed: str) -> date:
    try:
        return date.fromisoformat(typed)
    except ValueError:
        raise refused(
            "closed",
            f"`{typed[:20]}` is no day of the calendar",
            "Days are written year-month-day, blanks between them.",
            "Write it as `closed=2028-03-02`.",
        ) from None
