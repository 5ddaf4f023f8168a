"""The days of review after an operation: counted, and moved off days on which nobody is there."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.dates.moving import Moved, moved
from chamberwise.engine.working.dates.plans import PLANS, Plan, Visit, own_plan
from chamberwise.engine.working.dates.working_days import closed_days, holidays_of
from chamberwise.engine.working.form import Calculation, Input, Kind, between
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.refusal import refused
from chamberwise.engine.working.scalars import told_day
from chamberwise.engine.working.sheet import Sheet

OWN = "own"

OPERATED = Input(
    name="operated",
    meaning=N_("day of the operation, day 0"),
    example="2028-02-25",
    kind=Kind.DATE,
)
AFTER = Input(
    name="after",
    meaning=N_("what happened; `own` for the unit's own rule"),
    example="vitreous-loss",
    kind=Kind.WORD,
    words=(*PLANS, OWN),
)
HOLIDAYS = Input(
    name="holidays",
    meaning=N_("whose bank holidays: a country, with a part of it after a hyphen; or `none`"),
    example="GB-ENG",
    kind=Kind.TEXT,
)
CLOSED = Input(
    name="closed",
    meaning=N_("the unit's own closed days, blanks between them"),
    example="2028-03-02 2028-03-03",
    kind=Kind.TEXT,
    required=False,
)
WEEKEND = Input(
    name="urgent-on-closed-day",
    meaning=N_("an urgent review on a closed day stays, with a slot opened, or goes earlier"),
    example="stay",
    kind=Kind.WORD,
    words=("stay", "earlier"),
    required=False,
    given="stay",
)


def _days(name: str, meaning: str, unit: str, also: tuple[str, ...], most: str) -> Input:
    return Input(
        name=name,
        meaning=meaning,
        example="1 7" if unit == "d" else "1 3",
        kind=Kind.SEVERAL,
        unit=unit,
        also=also,
        hard=between("0" if unit == "d" else "1", most),
        required=False,
        outside=N_("Such a day is no review after an operation."),
    )


URGENT = _days("urgent-days", N_("own rule: urgent reviews, in days"), "d", (), "400")
ROUTINE = _days("routine-days", N_("own rule: routine reviews, in days"), "d", (), "400")
MONTHS = _days("months", N_("own rule: routine reviews, in months"), "", (), "24")


def work(given: Given, sheet: Sheet) -> None:
    """Count each review's day, and move what falls on a closed one."""
    operated = given.day("operated")
    holidays = holidays_of(given.word("holidays"), operated.year)
    closed = closed_days(holidays, given.word("closed"))
    plan = _plan(given)
    rows = []
    for place, visit in enumerate(plan.visits, start=1):
        found = moved(visit, operated, closed, given.word("urgent-on-closed-day") == "earlier")
        told = told_day(found.day)
        sheet.appoint(
            f"review-{place}",
            visit.name,
            found.day,
            _("{date}, day {count}").format(date=told, count=found.count),
        )
        rows.append((visit.name, visit.told, told, found.remark))
        sheet.say(_counted(visit, found))
    sheet.tabulate(
        _("Days of review"), (N_("review"), N_("counted"), N_("date"), N_("to know")), rows
    )
    for remark in plan.remarks:
        sheet.remark(_(remark))
    if not holidays:
        sheet.remark(_("No bank holidays were looked at: only weekends and the closed days named."))


def _counted(visit: Visit, found: Moved) -> str:
    came = told_day(found.counted)
    if not found.remark:
        counted = _("{visit}: {when} after day 0 is {came}.")
        return counted.format(visit=visit.name, when=visit.told, came=came)
    counted = _("{visit}: {when} after day 0 is {came}; {remark}.")
    return counted.format(visit=visit.name, when=visit.told, came=came, remark=found.remark)


def _plan(given: Given) -> Plan:
    lists = (given.numbers("urgent-days"), given.numbers("routine-days"), given.numbers("months"))
    is_own = given.word("after") == OWN
    if is_own != any(lists):
        raise refused(
            "after",
            _("the unit's own days go with `after=own`, and only with it"),
            _("Two rules would stand beside each other."),
            _(
                "Give `after=own` and `urgent-days`, `routine-days` or `months`; or a plan and "
                "none."
            ),
        )
    for each in (day for days in lists for day in days):
        if each != each.to_integral_value():
            raise refused(
                "after", _("days and months are whole"), _("Reviews fall on days."), _("Round it.")
            )
    return own_plan(*lists) if is_own else PLANS[given.word("after")]


CALCULATION = Calculation(
    name="after-care-dates",
    title=N_("Days of review after an operation"),
    purpose=N_("Dates of review by a plan or the unit's own rule, bank holidays looked at."),
    inputs=(OPERATED, AFTER, HOLIDAYS, CLOSED, WEEKEND, URGENT, ROUTINE, MONTHS),
    sources=(citations.HABIT, citations.FRAGMENT_TIMING, citations.GAS_LEFT),
    limits=(
        N_("The plans are common practice, not a rule: the unit's own goes first."),
        N_("It knows bank holidays as its library does; one proclaimed later it does not know."),
        N_("It keeps days, not hours."),
    ),
    cautions=(
        N_(
            "Warning signs protect, not only a fixed day: pain, redness, falling sight, "
            "flashes or a shadow are seen at once, whatever the plan says."
        ),
    ),
    work=work,
)
