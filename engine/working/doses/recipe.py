"""How a drug is made up: from a vial, by steps, to a strength and a volume."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from chamberwise.engine.model.words import Mark
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.refusal import refused
from chamberwise.engine.working.sheet import Sheet


@dataclass(frozen=True, slots=True)
class Powder:
    """A vial of some milligrams made up to some millilitres."""

    mass: str
    volume: str
    with_what: str


@dataclass(frozen=True, slots=True)
class Step:
    """Some millilitres taken and made up with something to a larger volume."""

    taken: str
    to: str
    with_what: str


@dataclass(frozen=True, slots=True)
class Recipe:
    """A way of making a drug up. `start` is a powder, or the strength in the vial in mg/mL.

    `least` and `most` are the millilitres given; a least of 0 says that only a most is published.
    What comes with the drug in one vial stands under `beside`, with its strength.
    """

    name: str
    title: str
    mark: Mark
    start: Powder | str
    steps: tuple[Step, ...]
    least: str
    most: str
    beside: tuple[tuple[str, str], ...] = ()
    note: str = ""


def make_up(sheet: Sheet, recipe: Recipe, displaced: Decimal) -> Decimal:
    """Work the strength a recipe comes to, step by step."""
    match recipe.start:
        case Powder(mass=mass, volume=volume, with_what=solvent):
            sheet.take("m0", mass)
            sheet.take("v0", volume)
            sheet.work("c", "strength of the solution", "m0 / v0", "mg/mL")
            _solvent(sheet, recipe.start, displaced, solvent)
        case strength:
            sheet.take("c", strength)
            sheet.say(f"Read back: the vial holds {plain(Decimal(strength))} mg/mL.")
    for step in recipe.steps:
        sheet.take("v1", step.taken)
        sheet.take("v2", step.to)
        sheet.work("c", "strength after making up", "c * v1 / v2", "mg/mL")
        rest = Decimal(step.to) - Decimal(step.taken)
        sheet.say(
            f"Read back: {step.taken} mL, and {plain(rest)} mL of {step.with_what}, together "
            f"{step.to} mL of {plain(sheet['c'])} mg/mL."
        )
    return sheet["c"]


def _solvent(sheet: Sheet, powder: Powder, displaced: Decimal, solvent: str) -> None:
    if displaced:
        sheet.take("d", displaced)
        sheet.work("s", "solvent, less what the powder displaces", "v0 - d", "mL")
        added = plain(sheet["s"])
    else:
        added = powder.volume
    sheet.say(
        f"Read back: {powder.mass} mg with {added} mL of {solvent} is {powder.volume} mL of "
        f"{plain(sheet['c'])} mg/mL."
    )


def amounts(sheet: Sheet, recipe: Recipe, volume: Decimal | None) -> Iterator[tuple[str, Decimal]]:
    """Work the amount in the volume given, or in the least and the most. Raises `RefusedError`."""
    least, most = Decimal(recipe.least), Decimal(recipe.most)
    if volume is not None and not least <= volume <= most:
        raise refused(
            "volume",
            f"{plain(volume)} mL is not what this recipe gives",
            f"It gives {_ends(least, most)} mL; the volume of one recipe in the strength of "
            "another is how tenfold doses come about.",
            "Look at which recipe is meant.",
        )
    volumes = (
        [volume] if volume is not None else [each for each in dict.fromkeys((least, most)) if each]
    )
    for each in volumes:
        sheet.take("v", each)
        yield plain(each), sheet.work("m", f"amount in {plain(each)} mL", "c * v", "mg")


def _ends(least: Decimal, most: Decimal) -> str:
    return plain(least) if least == most else f"{plain(least)} to {plain(most)}"
