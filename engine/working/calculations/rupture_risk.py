"""The chance that the capsule tears, by published models side by side."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.risk import odds, points
from chamberwise.engine.working.risk.factors import NO, OF_ODDS, OF_POINTS, YES, chosen
from chamberwise.engine.working.risk.odds import Ratio
from chamberwise.engine.working.sheet import Sheet

RECENTRED = replace(
    chosen("recentred", "start from a lower baseline, our own unpublished inference", YES, NO),
    words=(YES, NO),
    example=NO,
    given=NO,
)
HALVED = (
    "The odds-ratio model is of 2009. Ruptures have about halved since, from 1.95 % to 1.01 % of "
    "operations (read), so that it now overstates about two-fold."
)


def work(given: Given, sheet: Sheet) -> None:
    """Work the odds-ratio model as a range, and put the points models beside it."""
    found = odds.ratios(given)
    baseline = odds.RECENTRED if given.word("recentred") == YES else odds.BASELINE
    _range(sheet, found, baseline)
    sheet.tabulate(
        "Odds ratios (2009)",
        ("factor", "ratio"),
        [(each.title, _told(each)) for each in found],
    )
    _points(given, sheet)
    sheet.remark(HALVED)
    sheet.remark(
        "It is for preparing a list, not for consent, for which the unit's own figures serve."
    )
    if given.word("recentred") == YES:
        sheet.remark("The lower baseline of 0.385 % is our own inference and unpublished.")
    if given.word("surgeon") == "staff-grade":
        sheet.remark("Copies of the table give 0.36 or 0.87 for staff grades: both are worked.")


def _range(sheet: Sheet, found: tuple[Ratio, ...], baseline: str) -> None:
    unknown = [each.title.removesuffix(": unknown") for each in found if each.unknown]
    if all(each.low == each.high for each in found):
        chance = odds.chance(sheet, found, high=True, baseline=baseline)
        sheet.conclude("low", "chance of rupture", chance, "%", 2)
        sheet.conclude("high", "at most the same: nothing is open", chance, "%", 2)
        return
    sheet.head("If all that is open is favourable")
    low = odds.chance(sheet, found, high=False, baseline=baseline)
    sheet.head("If all that is open is unfavourable")
    high = odds.chance(sheet, found, high=True, baseline=baseline)
    sheet.conclude("low", "chance of rupture, at least", low, "%", 2)
    sheet.conclude("high", "chance of rupture, at most", high, "%", 2)
    if unknown:
        sheet.remark(f"Unknown never counts as absent. Open: {'; '.join(unknown)}.")


def _told(ratio: Ratio) -> str:
    if ratio.low == ratio.high:
        return plain(ratio.low)
    return f"{plain(ratio.low)} to {plain(ratio.high)}"


def _points(given: Given, sheet: Sheet) -> None:
    muhtaseb, habib = points.muhtaseb(given), points.habib(given)
    rates = points.groups(muhtaseb)
    ends = " to ".join(dict.fromkeys((rates[0], rates[-1])))
    low, high = (result.shown.removesuffix(" %") for result in sheet.results)
    sheet.tabulate(
        "Models side by side",
        ("model", "says", "of"),
        (
            (
                "Narendran 2009, odds ratios",
                f"{low} to {high} %" if low != high else f"{low} %",
                "posterior capsule rupture",
            ),
            (
                f"Muhtaseb 2004, {muhtaseb.told} points",
                f"{ends} %",
                f"rupture in that group; not asked: {len(muhtaseb.unknown)} of 12",
            ),
            (
                f"Habib 2006, {habib.told} points",
                "no probability",
                f"difficulty; not asked: {len(habib.unknown)} of 13",
            ),
        ),
    )


CALCULATION = Calculation(
    name="rupture-risk",
    title="Chance of posterior capsule rupture",
    purpose="The chance by the model of 2009 as a range, with models of points beside it.",
    inputs=(*OF_ODDS, *OF_POINTS, RECENTRED),
    sources=(
        citations.NARENDRAN,
        citations.COMPOSITE_LETTER,
        citations.MUHTASEB,
        citations.HABIB,
        citations.NATIONAL_2015,
        citations.NATIONAL_2024,
        citations.OWN,
    ),
    limits=(
        "The models differ in what they count as a rupture, and were made of complete records.",
        "Odds ratios of different papers are never multiplied with each other.",
        "It does not know the unit, the surgeon's own figures, or the machine.",
    ),
    cautions=("A low figure is no reason to leave the second lens or the cutter out of the room.",),
    work=work,
)
