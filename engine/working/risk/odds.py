"""The published odds-ratio model: ratios are multiplied, and multiply odds, never chances.

A factor that is unknown has a lowest and a highest ratio; so has the one grade of surgeon on
which copies of the table differ.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.form import UNKNOWN
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.risk import factors
from chamberwise.engine.working.risk.factors import NO, YES
from chamberwise.engine.working.sheet import Sheet

BASELINE = "0.00736"
"""The chance for the reference patient and a consultant."""
RECENTRED = "0.00385"
"""Our own inference: the mean composite ratio of 2.64 would then give 1.01 %. Unpublished."""

AGES = ((60, "1"), (70, "1.14"), (80, "1.42"), (90, "1.58"), (116, "2.37"))
"""Ratios by the age below which they hold."""
LONG = Decimal(26)
GRADES = {
    "consultant": ("1",),
    "associate-specialist": ("0.87",),
    "staff-grade": ("0.36", "0.87"),
    "fellow": ("1.65",),
    "registrar": ("1.6",),
    "senior-house-officer": ("3.73",),
}
PUPILS = {"large": "1", "medium": "1.14", "small": "1.45"}


@dataclass(frozen=True, slots=True)
class Ratio:
    """A factor's lowest and highest odds ratio; the same where it is known."""

    symbol: str
    name: str
    title: str
    low: Decimal
    high: Decimal
    unknown: bool = False


def ratios(given: Given) -> tuple[Ratio, ...]:
    """Return the ratio of every factor of the model."""
    return (
        _age(given),
        _of("sex", _("sex"), given.word("sex"), {"female": "1", "male": "1.28"}),
        _yes("glaucoma", factors.GLAUCOMA.name, given, "1.3"),
        _yes("retinopathy", factors.RETINOPATHY.name, given, "1.63"),
        _dense(given),
        _yes("view", factors.NO_VIEW.name, given, "2.46"),
        _exfoliation(given),
        _of("pupil", _("pupil"), given.word("pupil"), PUPILS),
        _long(given),
        _yes("alpha", factors.ALPHA_BLOCKER.name, given, "1.51"),
        _yes("flat", factors.CANNOT_LIE_FLAT.name, given, "1.27"),
        _grade(given),
    )


def chance(sheet: Sheet, found: tuple[Ratio, ...], *, high: bool, baseline: str) -> Decimal:
    """Work the chance in per cent, from the low or the high end of every ratio."""
    for each in found:
        sheet.take(each.symbol, each.high if high else each.low)
    sheet.take("p0", baseline)
    product = " * ".join(each.symbol for each in found)
    sheet.work("OR", _("ratios multiplied"), product, places=4)
    sheet.work("odds", _("odds: the ratio times the odds of the reference"), "OR * p0 / (1 - p0)")
    return sheet.work("p", _("chance from the odds"), "100 * odds / (1 + odds)", "%", 4)


def _known(symbol: str, name: str, said: str, *values: str) -> Ratio:
    numbers = tuple(map(Decimal, values))
    return Ratio(symbol, name, f"{name}: {said}", min(numbers), max(numbers))


def _unknown(symbol: str, name: str, values: Iterable[str]) -> Ratio:
    numbers = tuple(map(Decimal, values))
    title = _("{factor}: unknown").format(factor=name)
    return Ratio(symbol, name, title, min(numbers), max(numbers), unknown=True)


def _of(symbol: str, name: str, said: str, levels: dict[str, str]) -> Ratio:
    if said in levels:
        return _known(symbol, name, said, levels[said])
    return _unknown(symbol, name, levels.values())


def _yes(symbol: str, name: str, given: Given, ratio: str) -> Ratio:
    return _of(symbol, name, given.word(name), {NO: "1", YES: ratio})


def _age(given: Given) -> Ratio:
    if "age" not in given:
        return _unknown("age", _("age"), (ratio for _below, ratio in AGES))
    age = given.number("age")
    ratio = next(ratio for below, ratio in AGES if age < below)
    return _known("age", _("age"), decimal(str(age)), ratio)


def _dense(given: Given) -> Ratio:
    said = given.word("nucleus")
    word = UNKNOWN if said == UNKNOWN else YES if said == "brunescent-or-white" else NO
    return _of("dense", _("brunescent or white"), word, {NO: "1", YES: "2.99"})


def _exfoliation(given: Given) -> Ratio:
    """Either of the two counts, once; both have to be excluded."""
    said = (given.word("pseudoexfoliation"), given.word("phacodonesis"))
    word = YES if YES in said else UNKNOWN if UNKNOWN in said else NO
    return _of("pxf", _("pseudoexfoliation or phacodonesis"), word, {NO: "1", YES: "2.92"})


def _long(given: Given) -> Ratio:
    word = UNKNOWN
    if "axial-length" in given:
        word = YES if given.number("axial-length") >= LONG else NO
    return _of("long", _("26 mm or longer"), word, {NO: "1", YES: "1.47"})


def _grade(given: Given) -> Ratio:
    said = given.word("surgeon")
    if said in GRADES:
        return _known("grade", _("surgeon"), said, *GRADES[said])
    every = (ratio for several in GRADES.values() for ratio in several)
    return _unknown("grade", _("surgeon"), every)
