"""How a drug is made up: from a vial, by steps, to a strength and a volume."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import gettext as _
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
            sheet.work("c", _("strength of the solution"), "m0 / v0", "mg/mL")
            _solvent(sheet, recipe.start, displaced, solvent)
        case strength:
            sheet.take("c", strength)
            sheet.say(
                _("Read back: the vial holds {strength} mg/mL.").format(
                    strength=plain(Decimal(strength))
                )
            )
    for step in recipe.steps:
        sheet.take("v1", step.taken)
        sheet.take("v2", step.to)
        sheet.work("c", _("strength after making up"), "c * v1 / v2", "mg/mL")
        rest = Decimal(step.to) - Decimal(step.taken)
        sheet.say(
            _(
                "Read back: {taken} mL, and {rest} mL of {with_what}, together {to} mL of {c} "
                "mg/mL."
            ).format(
                taken=decimal(step.taken),
                rest=plain(rest),
                with_what=_(step.with_what),
                to=decimal(step.to),
                c=plain(sheet["c"]),
            )
        )
    return sheet["c"]


def _solvent(sheet: Sheet, powder: Powder, displaced: Decimal, solvent: str) -> None:
    if displaced:
        sheet.take("d", displaced)
        sheet.work("s", _("solvent, less what the powder displaces"), "v0 - d", "mL")
        added = plain(sheet["s"])
    else:
        added = decimal(powder.volume)
    sheet.say(
        _("Read back: {mass} mg with {added} mL of {solvent} is {volume} mL of {c} mg/mL.").format(
            mass=decimal(powder.mass),
            added=added,
            solvent=_(solvent),
            volume=decimal(powder.volume),
            c=plain(sheet["c"]),
        )
    )


def amounts(
    sheet: Sheet, recipe: Recipe, volume: Decimal | None
) -> Iterator[tuple[Decimal, Decimal]]:
    """Work the amount in the volume given, or in the least and the most. Raises `RefusedError`."""
    least, most = Decimal(recipe.least), Decimal(recipe.most)
    if volume is not None and not least <= volume <= most:
        raise refused(
            "volume",
            _("{volume} mL is not what this recipe gives").format(volume=plain(volume)),
            _(
                "It gives {volumes} mL; the volume of one recipe in the strength of another is "
                "how tenfold doses come about."
            ).format(volumes=_ends(least, most)),
            _("Look at which recipe is meant."),
        )
    volumes = (
        [volume] if volume is not None else [each for each in dict.fromkeys((least, most)) if each]
    )
    for each in volumes:
        sheet.take("v", each)
        yield (
            each,
            sheet.work("m", _("amount in {volume} mL").format(volume=plain(each)), "c * v", "mg"),
        )


def _ends(least: Decimal, most: Decimal) -> str:
    return (
        plain(least)
        if least == most
        else _("{least} to {most}").format(least=plain(least), most=plain(most))
    )
