"""The chance of at least one rupture on a list."""

from __future__ import annotations

from decimal import Decimal

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.form import Calculation, Input, Kind, between
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.refusal import RefusedError, refused
from chamberwise.engine.working.sheet import Sheet

RISKS = Input(
    name="risks",
    meaning=N_("the chance of each case, blanks between them"),
    example="1.9 0.7 5.9 %",
    kind=Kind.SEVERAL,
    unit="%",
    also=("of 1",),
    bare=False,
    hard=between("0", "100"),
    soft=between("0.2", "50"),
    required=False,
)
CASES = Input(
    name="cases",
    symbol="n",
    meaning=N_("how many cases, where all have one rate"),
    example="8",
    hard=between("1", "60"),
    required=False,
)
RATE = Input(
    name="rate",
    symbol="q",
    meaning=N_("the chance of each case, where all have one"),
    example="1.01 %",
    unit="%",
    also=("of 1",),
    bare=False,
    hard=between("0", "100"),
    soft=between("0.2", "50"),
    required=False,
)


def work(given: Given, sheet: Sheet) -> None:
    """Work the chance that none tears, and from that the chance that at least one does."""
    if ("risks" in given) == ("cases" in given or "rate" in given):
        raise _one_way()
    by = _of_each if "risks" in given else _of_one_rate
    sheet.take("none", by(given, sheet))
    chance = sheet.work("p", _("at least one tears"), "100 * (1 - none)", "%", 4)
    sheet.conclude("chance", _("chance of at least one rupture"), chance, "%", 2)
    sheet.remark(_("It takes it that one case says nothing of the next."))


def _of_each(given: Given, sheet: Sheet) -> Decimal:
    risks = given.numbers("risks")
    for place, each in enumerate(risks, start=1):
        sheet.take(f"p{place}", each)
    written = " * ".join(f"(1 - p{place} / 100)" for place in range(1, len(risks) + 1))
    return sheet.work("none", _("none tears"), written)


def _of_one_rate(given: Given, sheet: Sheet) -> Decimal:
    if not ("cases" in given and "rate" in given):
        raise _one_way()
    cases = given.number("cases")
    if cases != cases.to_integral_value():
        raise refused(
            "cases",
            _("`cases` is {cases}").format(cases=plain(cases)),
            _("Cases are counted."),
            _("Give a whole number."),
        )
    sheet.take("n", cases)
    sheet.take("q", given.number("rate"))
    return sheet.work("none", _("none tears"), "(1 - q / 100)^n")


def _one_way() -> RefusedError:
    return refused(
        "risks",
        _("a list is told by `risks`, or by `cases` and `rate`"),
        _("Both together could disagree, and neither says nothing."),
        _('Give `risks="1.9 0.7 5.9 %"`, or `cases=8` and `rate="1.01 %"`.'),
    )


CALCULATION = Calculation(
    name="list-risk",
    title=N_("Chance of at least one rupture on a list"),
    purpose=N_("From the chance of each case to that of the list."),
    inputs=(RISKS, CASES, RATE),
    sources=(citations.OWN, citations.NATIONAL_2024),
    limits=(N_("It is no better than the chances that went in; see `rupture-risk`."),),
    cautions=(N_("It is for preparing the room. It says nothing of any one patient."),),
    work=work,
    shown=("risks",),
)
