"""The written forms of numbers, units and strengths that the rules on doses look for.

Pieces of regular expressions are possessive, so that no input makes them slow.
"""

from __future__ import annotations

import re
from decimal import Decimal

NUMBER_START = r"(?<![\w.,])"
"""Stands before a number: never in the middle of a longer number or of a name such as `A4`."""

NUMBER = r"(?:[0-9]{1,3}+(?:,[0-9]{3})++(?![0-9])|[0-9]++)(?:\.[0-9]++)?+"

_MASSES = ("mg", "g", "kg", "milligrams?", "grams?", "micrograms?", "nanograms?")
_SHORT_MASSES = ("mcg", "ng", "ug", "[µμ]g")
_VOLUMES = ("mL", "ml", "L", "millilitres?", "litres?", "microlitres?", "[µμ]L")

DOSE_UNIT = "(?:" + "|".join((*_MASSES, *_SHORT_MASSES, *_VOLUMES, "units?", "mmol", "mmHg")) + ")"
"""A unit in which a dose or a pressure is given. It has no end: follow it with `UNIT_END`."""

SPACED_UNIT = f"(?:{DOSE_UNIT}|mm|cm)"
"""A unit that stands apart from its number: dose units and lengths."""

UNIT_END = r"(?!\w)"

QUANTITY = re.compile(rf"{NUMBER_START}{NUMBER}\s?(?:{SPACED_UNIT}|%){UNIT_END}")

_PER_MILLILITRE = rf"\s?(?:/|per)\s?(?:1\s?)?(?:mL|ml|millilitre){UNIT_END}"
_STRENGTH_UNIT = "(?:" + "|".join((*_MASSES, *_SHORT_MASSES, "units?")) + ")"
_STRENGTH = re.compile(rf"{NUMBER_START}{NUMBER}\s?{_STRENGTH_UNIT}{_PER_MILLILITRE}")


def gives_strength(text: str) -> bool:
    """Return whether the text gives a mass, or units, per millilitre.

    >>> gives_strength("lidocaine 1 % (10 mg per mL)")
    True
    """
    return _STRENGTH.search(text) is not None


def value_of(number: str) -> Decimal:
    """Return what a written number says; commas group thousands.

    >>> value_of("1,000.5")
    Decimal('1000.5')
    """
    return Decimal(number.replace(",", ""))


def plainly(value: Decimal) -> str:
    """Write a value without an exponent and without trailing zeros.

    >>> plainly(Decimal("0.10"))
    '0.1'
    """
    written = f"{value:,f}"
    return written.rstrip("0").rstrip(".") if "." in written else written
