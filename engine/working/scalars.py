"""From what was typed to a number with its unit, a word or a day; what is in doubt is refused."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from functools import lru_cache

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.language.numbers import day_in_words
from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.commas import LONGEST, with_points
from chamberwise.engine.working.digits import plain, rounded
from chamberwise.engine.working.form import Input
from chamberwise.engine.working.refusal import RefusedError, refused
from chamberwise.engine.working.units import UnitError, factor, spelt

KERATOMETRIC = Decimal("337.5")
"""Dioptres times millimetres: a radius and its power by the keratometric index 1.3375."""
REMEMBERED = 4_096
"""Texts whose reading is kept: in a long list the same ones come again and again."""
MOST_DIGITS = 12
YEARS = range(2000, 2100)
"""In which a day may lie: nobody reviews an operation outside them, and calendars end."""
_NUMBER = re.compile(r"([+-]?[0-9]+(?:\.[0-9]+)?)\s*(.*)")
_EXPONENT = re.compile(r"[eE][+-]?[0-9]")
_MINUS = str.maketrans({"\u2212": "-", "\u2010": "-", "\u2011": "-", "\u2013": "-", "\u00a0": " "})


@dataclass(frozen=True, slots=True)
class Number:
    """A number in the unit of its input, and how to tell it."""

    value: Decimal
    told: str


def number(of: Input, typed: str) -> Number:
    """Return the number typed, as the language spoken writes numbers. Raises `RefusedError`."""
    return _number(of, typed, spoken().code)


@lru_cache(REMEMBERED)
def _number(of: Input, typed: str, _code: str) -> Number:
    text = with_points(of, typed.translate(_MINUS).strip())
    found = _NUMBER.fullmatch(text)
    if found is None or _EXPONENT.match(found[2]) or len(found[1]) > MOST_DIGITS:
        raise _no_number(of, typed)
    value, unit = Decimal(found[1]), found[2].strip()
    unit = unit if unit == of.unit else spelt(unit)
    if not unit and not of.bare:
        units = _(" or ").join(dict.fromkeys((of.unit, *of.also)))
        raise refused(
            of.name,
            _("`{of}` is {value} without a unit").format(of=of.name, value=plain(value)),
            _("It could be {units}, and each would pass.").format(units=units),
            _('Write the unit: `{of}="{value} {unit}"`.').format(
                of=of.name, value=plain(value), unit=of.unit
            ),
        )
    return _in_unit(of, value, unit)


def numbers(of: Input, typed: str) -> tuple[Number, ...]:
    """Return numbers parted by blanks or semicolons; a unit at the end is the unit of all."""
    return _numbers(of, typed, spoken().code)


@lru_cache(REMEMBERED)
def _numbers(of: Input, typed: str, _code: str) -> tuple[Number, ...]:
    text = with_points(of, typed.translate(_MINUS).strip())
    parts = re.findall(r"([+-]?[0-9][^\s;]*)\s*([A-Za-zµμ%][^\s;]*)?", text)
    units = list(dict.fromkeys(unit for _figure, unit in parts if unit))
    rest = re.sub(r"([+-]?[0-9][^\s;]*)\s*([A-Za-zµμ%][^\s;]*)?|[\s;]", "", text)
    if not parts or rest or len(units) > 1:
        raise _no_number(of, typed)
    unit = f" {units[0]}" if units else ""
    return tuple(number(of, f"{each}{unit}") for each, _unit in parts)


def _in_unit(of: Input, value: Decimal, unit: str) -> Number:
    if not unit or unit in (of.unit, spelt(of.unit)):
        return Number(value, f"{plain(value)} {of.unit}".strip())
    try:
        if of.is_curvature and factor(unit, "mm"):
            return _from_radius(of, value * factor(unit, "mm"))
    except UnitError:
        pass
    try:
        if of.unit == "%":
            raise UnitError(_("`{unit}` is no share of a hundred").format(unit=unit))
        by = factor(unit, of.unit)
    except UnitError as error:
        takes = (
            _("Give it in {unit}.").format(unit=of.unit)
            if of.unit
            else _("Give it as a plain number.")
        )
        raise refused(
            of.name,
            f"`{of.name}`: {error}",
            _("It cannot be turned into one that is taken."),
            takes,
        ) from (None)
    taken = rounded(value * by, 6)
    return Number(
        taken,
        _("{value} {unit}, that is {taken} {own_unit}").format(
            value=plain(value), unit=unit, taken=plain(taken), own_unit=of.unit
        ),
    )


def _from_radius(of: Input, radius: Decimal) -> Number:
    if radius <= 0:
        raise refused(
            of.name,
            _("`{of}` is no radius").format(of=of.name),
            _("A radius is above 0 mm."),
            _("Look at it again."),
        )
    taken = rounded(KERATOMETRIC / radius, 6)
    told = _("radius {radius} mm, that is {index} / {radius} = {taken} D").format(
        index=plain(KERATOMETRIC), radius=plain(radius), taken=plain(taken)
    )
    return Number(taken, told)


def _no_number(of: Input, typed: str) -> RefusedError:
    shown = typed.strip()[:LONGEST] or _("empty")
    takes = (
        _("It takes digits with a point for decimals in {unit}, nothing like 1e9.")
        if of.unit
        else _("It takes digits with a point for decimals, nothing like 1e9.")
    )
    return refused(
        of.name,
        _("`{of}` is no number: {shown}").format(of=of.name, shown=shown),
        takes.format(unit=of.unit),
        _('Write it as `{of}="{example}"`.').format(of=of.name, example=of.example),
    )


def word(of: Input, typed: str) -> str:
    """Return the word typed. Raises `RefusedError` for one that is not offered."""
    found = typed.strip().casefold()
    if found in of.words:
        return found
    offered = ", ".join(f"`{each}`" for each in of.words)
    raise refused(
        of.name,
        _("`{of}` takes no `{strip}`").format(of=of.name, strip=typed.strip()[:LONGEST]),
        _("It is one of {offered}.").format(offered=offered),
        did_you_mean(
            found, of.words, _("Write `{of}={example}`.").format(of=of.name, example=of.example)
        ),
    )


def day(of: Input, typed: str) -> date:
    """Return the day typed. Raises `RefusedError` for anything but year-month-day."""
    try:
        if re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", typed.strip()):
            found = date.fromisoformat(typed.strip())
            return _of_our_time(of, found)
    except ValueError:
        pass
    raise refused(
        of.name,
        _("`{of}` is no day of the calendar: {strip}").format(
            of=of.name, strip=typed.strip()[:LONGEST]
        ),
        _("Days are written year-month-day, since 03/04 is read in two ways."),
        _("Write it as `{of}={example}`.").format(of=of.name, example=of.example),
    )


def _of_our_time(of: Input, found: date) -> date:
    if found.year in YEARS:
        return found
    raise refused(
        of.name,
        _("`{of}` lies in the year {year}").format(of=of.name, year=found.year),
        _("Days are counted from {first} to {last} only.").format(first=YEARS[0], last=YEARS[-1]),
        _("Look at the year again, as in `{of}={example}`.").format(of=of.name, example=of.example),
    )


def told_day(day: date) -> str:
    """Return a day as it is told, its month in letters.

    >>> told_day(date(2028, 3, 3))
    'Fri 3 Mar 2028'
    """
    return day_in_words(day)


def line(of: Input, typed: str) -> str:
    """Return a short text on one line. Raises `RefusedError`."""
    found = " ".join(typed.split())
    if len(found) <= LONGEST * 4 and found.isprintable():
        return found
    raise refused(
        of.name,
        _("`{of}` is too long, or holds signs that cannot be seen").format(of=of.name),
        _("It is one short line."),
        _('Write it as `{of}="{example}"`.').format(of=of.name, example=of.example),
    )
