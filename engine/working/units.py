"""Units, through pint. Only those that are written at an operating table are known.

pint takes a while to load, so it is loaded when a unit has to be turned into another.
"""

from __future__ import annotations

import re
from decimal import Decimal
from functools import cache
from typing import TYPE_CHECKING, Any

from chamberwise.engine.language.texts import gettext as _

if TYPE_CHECKING:
    from pint import UnitRegistry

DEFINITIONS = (
    "meter = [length] = m",
    "gram = [mass] = g",
    "second = [time] = s",
    "centi- = 0.01 = c-",
    "milli- = 0.001 = m-",
    "micro- = 0.000001 = u-",
    "liter = 0.001 * meter ** 3 = L = l",
    "kilogram = 1000 * gram = kg",
    "inch = 0.0254 * meter = in",
    "pound = 453.59237 * gram = lb",
    "stone = 14 * pound = st",
    "minute = 60 * second = min",
    "hour = 60 * minute = h",
    "day = 24 * hour = d",
    "week = 7 * day",
    "dioptre = 1 / meter = D",
    "pascal = 0.001 * kilogram / meter / second ** 2 * 1000 = Pa",
    "mmHg = 133.322387415 * pascal",
    "cmH2O = 98.0665 * pascal",
    "percent = 10 * milligram / milliliter",
)
"""Exact by definition, but mmHg (13.5951 g/cm3 by convention). A percentage is g in 100 mL."""

SPELLINGS = {
    "": "",
    "%": "percent",
    "ml": "mL",
    "µl": "uL",
    "μl": "uL",
    "ul": "uL",
    "microlitre": "uL",
    "microlitres": "uL",
    "µg": "ug",
    "μg": "ug",
    "mcg": "ug",
    "microgram": "ug",
    "micrograms": "ug",
    "d": "D",
    "dpt": "D",
    "dioptres": "D",
    "diopter": "D",
    "diopters": "D",
    "mmhg": "mmHg",
    "cmh2o": "cm",
    "kgs": "kg",
    "lbs": "lb",
    "days": "day",
    "mg/ml": "mg/mL",
    "g/ml": "g/mL",
    "mg/kg": "mg/kg",
}
"""Other spellings of the same unit."""


_LOOKS_LIKE_A_UNIT = re.compile(r"[A-Za-z]{1,12}[0-9]?[A-Z]?(/[A-Za-z]{1,12}){0,2}")


class UnitError(ValueError):
    """A unit that is not known, or measures something else."""


def spelt(unit: str) -> str:
    """Return a unit as it is spelt here.

    >>> spelt("ML"), spelt("mm"), spelt(" % ")
    ('mL', 'mm', 'percent')
    """
    unit = unit.strip().replace(" per ", "/").replace(" ", "")
    return SPELLINGS.get(unit.casefold(), unit)


@cache
def _registry() -> UnitRegistry[Any]:
    from pint import UnitRegistry

    registry: UnitRegistry[Any] = UnitRegistry(None, non_int_type=Decimal)
    for each in DEFINITIONS:
        registry.define(each)
    return registry


@cache
def factor(unit: str, to: str) -> Decimal:
    """Return by how much to multiply a number of one unit for another. Raises `UnitError`.

    >>> factor("cm", "mm"), factor("percent", "mg/mL")
    (Decimal('10'), Decimal('10'))
    """
    if unit == to:
        return Decimal(1)
    if not _LOOKS_LIKE_A_UNIT.fullmatch(unit):
        raise UnitError(_("`{unit}` is no unit that is known here").format(unit=unit))
    from pint import DimensionalityError, UndefinedUnitError

    try:
        found: Decimal = _registry().Quantity(Decimal(1), unit).to(to).magnitude
    except UndefinedUnitError:
        raise UnitError(_("`{unit}` is no unit that is known here").format(unit=unit)) from None
    except DimensionalityError:
        raise UnitError(
            _("`{unit}` does not measure what `{to}` measures").format(unit=unit, to=to)
        ) from None
    except Exception as error:
        raise UnitError(_("`{unit}` cannot be read as a unit").format(unit=unit)) from error
    return Decimal(f"{found.normalize():f}")
