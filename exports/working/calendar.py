"""Days of a working as an iCalendar file; the same days give the same bytes."""

from __future__ import annotations

from datetime import UTC, datetime, time, timedelta
from hashlib import sha256

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.form import STANDING
from chamberwise.engine.working.working import Working

MADE_BY = "-//Chamberwise//days of review//EN"


def calendar(working: Working) -> bytes:
    """Return each day as an event of the whole day. It names nobody.

    The stamp that the format asks for is the first day itself: nothing here knows what time it is.
    """
    from icalendar import Calendar, Event

    made = Calendar()
    made.add("prodid", MADE_BY)
    made.add("version", "2.0")
    days = [each for each in working.results if each.day is not None]
    for each in days:
        assert each.day is not None
        event = Event()
        event.add("summary", f"{each.title} ({each.shown})")
        event.add("dtstart", each.day)
        event.add("dtend", each.day + timedelta(days=1))
        event.add("dtstamp", datetime.combine(each.day, time(), UTC))
        event.add("uid", f"{_digest(working, each.name)}@chamberwise.invalid")
        event.add("description", " ".join(map(_, STANDING)))
        made.add_component(event)
    return bytes(made.to_ical())


def _digest(working: Working, name: str) -> str:
    told = "\n".join([name, *(f"{each.name} {each.shown}" for each in working.results)])
    return sha256(told.encode()).hexdigest()[:20]
