"""From what was typed to a number with its unit, a word or a day; what is in doubt is refused."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from functools import lru_cache

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.working.digits import plain, rounded
from chamberwise.engine.working.form import Input
from chamberwise.engine.working.refusal import RefusedError, refused
from chamberwise.engine.working.units import UnitError, factor, spelt

KERATOMETRIC = Decimal("337.5")
"""Dioptres times millimetres: a radius and its power by the keratometric index 1.3375."""
REMEMBERED = 4_096
"""Texts whose reading is kept: in a long list the same ones come again and again."""
LONGEST = 60
MOST_DIGITS = 12
YEARS = range(2000, 2100)
"""In which a day may lie: nobody reviews an operation outside them, and calendars end."""
_NUMBER = re.compile(r"([+-]?[0-9]+(?:\.[0-9]+)?)\s*(.*)")
_EXPONENT = re.compile(r"[eE][+-]?[0-9]")
_COMMA = re.compile(r"[0-9]\s*,\s*[0-9]")
_MINUS = str.maketrans({"\u2212": "-", "\u2010": "-", "\u2011": "-", "\u2013": "-", "\u00a0": " "})


@dataclass(frozen=True, slots=True)
class Number:
    """A number in the unit of its input, and how to tell it."""

    value: Decimal
    told: str


@lru_cache(REMEMBERED)
def number(of: Input, typed: str) -> Number:
    """Return the number typed. Raises `RefusedError`."""
    text = typed.translate(_MINUS).strip()
    _plain_number(of, text)
    found = _NUMBER.fullmatch(text)
    if found is None or _EXPONENT.match(found[2]) or len(found[1]) > MOST_DIGITS:
        raise _no_number(of, typed)
    value, unit = Decimal(found[1]), found[2].strip()
    unit = unit if unit == of.unit else spelt(unit)
    if not unit and not of.bare:
        units = " or ".join(dict.fromkeys((of.unit, *of.also)))
        raise refused(
            of.name,
            f"`{of.name}` is {plain(value)} without a unit",
            f"It could be {units}, and each would pass.",
            f'Write the unit: `{of.name}="{plain(value)} {of.unit}"`.',
        )
    return _in_unit(of, value, unit)


@lru_cache(REMEMBERED)
def numbers(of: Input, typed: str) -> tuple[Number, ...]:
    """Return numbers parted by blanks or semicolons; a unit at the end is the unit of all."""
    text = typed.translate(_MINUS).strip()
    _plain_number(of, text)
    parts = re.findall(r"([+-]?[0-9][^\s;]*)\s*([A-Za-zµμ%][^\s;]*)?", text)
    units = list(dict.fromkeys(unit for _, unit in parts if unit))
    rest = re.sub(r"([+-]?[0-9][^\s;]*)\s*([A-Za-zµμ%][^\s;]*)?|[\s;]", "", text)
    if not parts or rest or len(units) > 1:
        raise _no_number(of, typed)
    unit = f" {units[0]}" if units else ""
    return tuple(number(of, f"{each}{unit}") for each, _ in parts)


def _plain_number(of: Input, text: str) -> None:
    if _COMMA.search(text):
        dotted = re.sub(r"\s*,\s*", ".", text)
        raise refused(
            of.name,
            f"`{of.name}` has a comma: {text[:LONGEST]}",
            "A comma may part decimals or thousands, or several numbers.",
            f'Write a point for decimals, as `{of.name}="{dotted[:LONGEST]}"`, and blanks between '
            "numbers.",
        )


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
            raise UnitError(f"`{unit}` is no share of a hundred")
        by = factor(unit, of.unit)
    except UnitError as error:
        takes = f"Give it in {of.unit}." if of.unit else "Give it as a plain number."
        raise refused(
            of.name, f"`{of.name}`: {error}", "It cannot be turned into one that is taken.", takes
        ) from (None)
    taken = rounded(value * by, 6)
    return Number(taken, f"{plain(value)} {unit}, that is {plain(taken)} {of.unit}")


def _from_radius(of: Input, radius: Decimal) -> Number:
    if radius <= 0:
        raise refused(
            of.name, f"`{of.name}` is no radius", "A radius is above 0 mm.", "Look at it again."
        )
    taken = rounded(KERATOMETRIC / radius, 6)
    told = f"radius {plain(radius)} mm, that is 337.5 / {plain(radius)} = {plain(taken)} D"
    return Number(taken, told)


def _no_number(of: Input, typed: str) -> RefusedError:
    shown = typed.strip()[:LONGEST] or "empty"
    unit = f" in {of.unit}" if of.unit else ""
    return refused(
        of.name,
        f"`{of.name}` is no number: {shown}",
        f"It takes digits with a point for decimals{unit}, nothing like 1e9.",
        f'Write it as `{of.name}="{of.example}"`.',
    )


def word(of: Input, typed: str) -> str:
    """Return the word typed. Raises `RefusedError` for one that is not offered."""
    found = typed.strip().casefold()
    if found in of.words:
        return found
    offered = ", ".join(f"`{each}`" for each in of.words)
    raise refused(
        of.name,
        f"`{of.name}` takes no `{typed.strip()[:LONGEST]}`",
        f"It is one of {offered}.",
        did_you_mean(found, of.words, f"Write `{of.name}={of.example}`."),
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
        f"`{of.name}` is no day of the calendar: {typed.strip()[:LONGEST]}",
        "Days are written year-month-day, since 03/04 is read in two ways.",
        f"Write it as `{of.name}={of.example}`.",
    )


def _of_our_time(of: Input, found: date) -> date:
    if found.year in YEARS:
        return found
    raise refused(
        of.name,
        f"`{of.name}` lies in the year {found.year}",
        f"Days are counted from {YEARS[0]} to {YEARS[-1]} only.",
        f"Look at the year again, as in `{of.name}={of.example}`.",
    )


def told_day(day: date) -> str:
    """Return a day as it is told, its month in letters.

    >>> told_day(date(2028, 3, 3))
    'Fri 3 Mar 2028'
    """
    return f"{day:%a} {day.day} {day:%b %Y}"


def line(of: Input, typed: str) -> str:
    """Return a short text on one line. Raises `RefusedError`."""
    found = " ".join(typed.split())
    if len(found) <= LONGEST * 4 and found.isprintable():
        return found
    raise refused(
        of.name,
        f"`{of.name}` is too long, or holds signs that cannot be seen",
        "It is one short line.",
        f'Write it as `{of.name}="{of.example}"`.',
    )
