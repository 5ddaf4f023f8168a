"""Which days are closed: weekends, bank holidays (by a library), and the unit's own."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from chamberwise.engine.language.languages import ENGLISH
from chamberwise.engine.language.numbers import weekday
from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.language.texts import gettext as _
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

    country, _hyphen, part = code.upper().partition("-")
    known = holidays.list_supported_countries(include_aliases=False)
    if country not in known:
        raise refused(
            "holidays",
            _("`{code}` is no country whose bank holidays are known").format(code=code),
            _("It takes the code of ISO 3166."),
            _("Write it as `holidays=GB-ENG`, or `holidays=none`."),
        )
    if part and part not in known[country]:
        parts = ", ".join(known[country]) or _("none")
        raise refused(
            "holidays",
            _("`{part}` is no part of {country} with holidays of its own").format(
                part=part, country=country
            ),
            _("Known are: {parts}.").format(parts=parts),
            _("Write one of them after the hyphen, or `holidays={country}`.").format(
                country=country
            ),
        )
    found = holidays.country_holidays(
        country, subdiv=part or None, years=range(year, year + YEARS), language=_language(country)
    )
    return dict(sorted(found.items()))


def _language(country: str) -> str:
    """Return the language the holidays are named in: the one spoken, where the library has it."""
    import holidays

    known = holidays.list_localized_countries(include_aliases=False).get(country, [])
    return spoken().code if spoken() is not ENGLISH and spoken().code in known else "en_GB"


def closed_days(holidays: Mapping[date, str], own: str) -> Closed:
    """Return why a day is closed. Raises `RefusedError` for an own day that is none."""
    own_days = {_day(each) for each in own.split()}

    def why(day: date) -> str:
        if day in holidays:
            return holidays[day]
        if day in own_days:
            return _("closed here")
        return weekday(day) if day.weekday() >= SATURDAY else ""

    return why


def _day(typed: str) -> date:
    try:
        return date.fromisoformat(typed)
    except ValueError:
        raise refused(
            "closed",
            _("`{typed}` is no day of the calendar").format(typed=typed[:20]),
            _("Days are written year-month-day, blanks between them."),
            _("Write it as `closed=2028-03-02`."),
        ) from None
