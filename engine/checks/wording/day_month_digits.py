"""A date names its month, or is written as year, month and day."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_DATE = re.compile(
    r"(?<![\w./:-])(?P<first>[0-9]{1,2})(?P<mark>[/.-])(?P<second>[0-9]{1,2})(?P=mark)"
    r"(?P<year>[0-9]{4}|[0-9]{2})(?![\w/-]|\.[0-9])"
)
_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def _find(text: str) -> Iterator[Hit]:
    for found in _DATE.finditer(text):
        first, second = int(found.group("first")), int(found.group("second"))
        year = found.group("year")
        meant = dict.fromkeys(_readings(first, second, year if len(year) == 4 else "20" + year))
        if meant and not _is_edition(found):
            choice = _(" or ").join(_('"{words}"').format(words=date) for date in meant)
            message = _('"{found}" does not say which number is the month').format(
                found=found.group()
            )
            yield Hit(
                found.start(), found.end(), message, _("write {choice}").format(choice=choice)
            )


def _readings(first: int, second: int, year: str) -> Iterator[str]:
    for day, month in ((first, second), (second, first)):
        if 1 <= day <= 31 and 1 <= month <= 12:
            yield f"{day} {_MONTHS[month - 1]} {year}"


def _is_edition(found: re.Match[str]) -> bool:
    """Return whether the figures look like an edition ("1.2.10") rather than a date."""
    return found.group("mark") == "." and len(found.group("first") + found.group("year")) == 3


RULE = WordingRule(
    slug="day-month-digits",
    title=N_("Date in figures only"),
    severity=Severity.ERROR,
    why=N_(
        "07/03/26 is 7 March to one reader and July 3 to another: a review or an expiry is missed."
    ),
    source=N_("common practice, no source"),
    reads=EVERY_KIND,
    find=_find,
    wrong="Use the box checked on 07/03/26.",
    right="Use the box checked on 7 Mar 2026.",
)
