"""Where mass, strength and volume stand in one text, the mass is strength times volume.

A range is checked at both its ends. A limit ("at most 4 mg") and the content of a container
("the 40 mg vial") are no doses. Nothing is worked out where one of the three is missing.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from chamberwise.engine.checks.wording.quantity import (
    NUMBER,
    NUMBER_START,
    UNIT_END,
    plainly,
    value_of,
)
from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_AMOUNT = re.compile(
    rf"{NUMBER_START}(?:(?P<low>{NUMBER})\s?(?:to|-|–)\s?)?(?P<number>{NUMBER})\s?"
    r"(?P<unit>mg|milligrams?|kg|g|grams?|micrograms?|mcg|ug|[µμ]g|nanograms?|ng|units?"
    rf"|mL|ml|millilitres?|microlitres?|[µμ]L){UNIT_END}"
    rf"(?:(?P<strength>\s?(?:/|per)\s?(?:1\s?)?(?:mL|ml|millilitre){UNIT_END})"
    r"|(?P<rate>\s?/|\sper\s(?!(?:[0-9]|eye|syringe|injection|dose|side)))"
    r"|(?P<container>\s(?:vial|ampoule|bottle|bag|tablet|powder|pack)))?"
)
_IN_MILLIGRAMS = {
    "kg": "1000000",
    "g": "1000",
    "gram": "1000",
    "mg": "1",
    "milligram": "1",
    "microgram": "0.001",
    "mcg": "0.001",
    "ug": "0.001",
    "µg": "0.001",
    "μg": "0.001",
    "nanogram": "0.000001",
    "ng": "0.000001",
}
_IN_MILLILITRES = {
    "mL": "1", "ml": "1", "millilitre": "1", "microlitre": "0.001", "µL": "0.001", "μL": "0.001",
}  # fmt: skip
_LIMIT = re.compile(
    r"\b(?:maximum|max|limit|at most|up to|(?:no|not) more than|never more than|total|exceed)\b"
    r"[^.;0-9]{0,20}$",
    re.IGNORECASE,
)
_MOST_AMOUNTS = 12
_TOLERANCE = Decimal("0.01")


@dataclass(frozen=True, slots=True)
class _Amount:
    start: int
    end: int
    written: str
    unit: str
    factor: Decimal
    values: tuple[Decimal, ...]


def _find(text: str) -> Iterator[Hit]:
    masses, strengths, volumes = _amounts(text)
    if not (masses and strengths and volumes):
        return
    if max(len(masses), len(strengths), len(volumes)) > _MOST_AMOUNTS:
        return
    for mass in masses:
        possible = _possible_masses(mass, strengths, volumes)
        if possible and not all(_near(value, possible) for value in mass.values):
            yield _disagreement(mass, possible, strengths[0], volumes[0])


def _amounts(text: str) -> tuple[list[_Amount], list[_Amount], list[_Amount]]:
    """Return the masses, the strengths and the volumes that the text gives."""
    masses: list[_Amount] = []
    strengths: list[_Amount] = []
    volumes: list[_Amount] = []
    for found in _AMOUNT.finditer(text):
        unit = found.group("unit").removesuffix("s")
        if found.group("strength"):
            strengths.append(_amount(found, unit))
        elif found.group("rate") or found.group("container"):
            continue
        elif unit in _IN_MILLILITRES:
            volumes.append(_amount(found, unit))
        elif not _LIMIT.search(text[max(0, found.start() - 45) : found.start()]):
            masses.append(_amount(found, unit))
    return masses, strengths, volumes


def _amount(found: re.Match[str], unit: str) -> _Amount:
    factor = Decimal((_IN_MILLIGRAMS | _IN_MILLILITRES).get(unit, "1"))
    values = tuple(
        value_of(found.group(end)) * factor for end in ("low", "number") if found.group(end)
    )
    end = found.end("strength") if found.group("strength") else found.end("unit")
    written = found.group()[: end - found.start()]
    return _Amount(found.start(), end, written, unit, factor, values)


def _possible_masses(
    mass: _Amount, strengths: list[_Amount], volumes: list[_Amount]
) -> list[Decimal]:
    counted = mass.unit == "unit"
    return [
        strength * volume
        for amount in strengths
        if (amount.unit == "unit") == counted
        for strength in amount.values
        for other in volumes
        for volume in other.values
    ]


def _near(value: Decimal, possible: list[Decimal]) -> bool:
    return any(abs(value - product) <= _TOLERANCE * product for product in possible)


def _disagreement(
    mass: _Amount, possible: list[Decimal], strength: _Amount, volume: _Amount
) -> Hit:
    held = f"{plainly(possible[0] / mass.factor)} {mass.unit}"
    message = _('{volume} of {strength} holds {held}, not "{mass}"').format(
        volume=volume.written, strength=strength.written, held=held, mass=mass.written
    )
    advice = _('write "{held}", or correct the volume or the strength from the label').format(
        held=held
    )
    return Hit(mass.start, mass.end, message, advice)


RULE = WordingRule(
    slug="dose-arithmetic",
    title=N_("Mass, strength and volume disagree"),
    severity=Severity.ERROR,
    why=N_(
        "One person draws up the volume and another checks the mass, and one of the "
        "two is wrong by a factor that the eye does not forgive."
    ),
    source=N_("common practice, no source"),
    reads=EVERY_KIND,
    find=_find,
    wrong="Inject cefuroxime 1 mg in 0.1 mL of 1 mg per mL.",
    right="Inject cefuroxime 1 mg in 0.1 mL of 10 mg per mL.",
)
