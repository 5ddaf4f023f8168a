"""The chance that the capsule tears, by published models side by side."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.risk import odds, points
from chamberwise.engine.working.risk.factors import NO, OF_ODDS, OF_POINTS, YES, chosen
from chamberwise.engine.working.risk.odds import Ratio
from chamberwise.engine.working.sheet import Sheet

RECENTRED = replace(
    chosen("recentred", N_("start from a lower baseline, our own unpublished inference"), YES, NO),
    words=(YES, NO),
    example=NO,
    given=NO,
)
OPEN = N_("Unknown never counts as absent. Open: {unknown}.")
HALVED = N_(
    "The odds-ratio model is of 2009. Ruptures have about halved since, from 1.95 "
    "% to 1.01 % of operations (read), so that it now overstates about two-fold."
)


def work(given: Given, sheet: Sheet) -> None:
    """Work the odds-ratio model as a range, and put the points models beside it."""
    found = odds.ratios(given)
    baseline = odds.RECENTRED if given.word("recentred") == YES else odds.BASELINE
    _range(sheet, found, baseline)
    sheet.tabulate(
        _("Odds ratios (2009)"),
        (N_("factor"), N_("ratio")),
        [(each.title, _told(each)) for each in found],
    )
    _points(given, sheet)
    sheet.remark(_(HALVED))
    sheet.remark(
        _("It is for preparing a list, not for consent, for which the unit's own figures serve.")
    )
    if given.word("recentred") == YES:
        sheet.remark(_("The lower baseline of 0.385 % is our own inference and unpublished."))
    if given.word("surgeon") == "staff-grade":
        sheet.remark(_("Copies of the table give 0.36 or 0.87 for staff grades: both are worked."))


def _range(sheet: Sheet, found: tuple[Ratio, ...], baseline: str) -> None:
    unknown = [each.name for each in found if each.unknown]
    if all(each.low == each.high for each in found):
        chance = odds.chance(sheet, found, high=True, baseline=baseline)
        sheet.conclude("low", _("chance of rupture"), chance, "%", 2)
        sheet.conclude("high", _("at most the same: nothing is open"), chance, "%", 2)
        return
    sheet.head(_("If all that is open is favourable"))
    low = odds.chance(sheet, found, high=False, baseline=baseline)
    sheet.head(_("If all that is open is unfavourable"))
    high = odds.chance(sheet, found, high=True, baseline=baseline)
    sheet.conclude("low", _("chance of rupture, at least"), low, "%", 2)
    sheet.conclude("high", _("chance of rupture, at most"), high, "%", 2)
    if unknown:
        sheet.remark(_(OPEN).format(unknown="; ".join(unknown)))


def _told(ratio: Ratio) -> str:
    if ratio.low == ratio.high:
        return plain(ratio.low)
    return _("{low} to {high}").format(low=plain(ratio.low), high=plain(ratio.high))


def _ends(low: str, high: str) -> str:
    if low == high:
        return decimal(low)
    return _("{low} to {high}").format(low=decimal(low), high=decimal(high))


def _points(given: Given, sheet: Sheet) -> None:
    muhtaseb, habib = points.muhtaseb(given), points.habib(given)
    rates = points.groups(muhtaseb)
    ends = _ends(rates[0], rates[-1])
    low, high = (result.shown.removesuffix(" %") for result in sheet.results)
    sheet.tabulate(
        _("Models side by side"),
        (N_("model"), N_("says"), N_("of")),
        (
            (
                _("Narendran 2009, odds ratios"),
                f"{_ends(low, high)} %",
                _("posterior capsule rupture"),
            ),
            (
                _("Muhtaseb 2004, {muhtaseb} points").format(muhtaseb=muhtaseb.told),
                f"{ends} %",
                _("rupture in that group; not asked: {unknown} of 12").format(
                    unknown=len(muhtaseb.unknown)
                ),
            ),
            (
                _("Habib 2006, {habib} points").format(habib=habib.told),
                _("no probability"),
                _("difficulty; not asked: {unknown} of 13").format(unknown=len(habib.unknown)),
            ),
        ),
    )


CALCULATION = Calculation(
    name="rupture-risk",
    title=N_("Chance of posterior capsule rupture"),
    purpose=N_("The chance by the model of 2009 as a range, with models of points beside it."),
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
        N_("The models differ in what they count as a rupture, and were made of complete records."),
        N_("Odds ratios of different papers are never multiplied with each other."),
        N_("It does not know the unit, the surgeon's own figures, or the machine."),
    ),
    cautions=(
        N_("A low figure is no reason to leave the second lens or the cutter out of the room."),
    ),
    work=work,
)
