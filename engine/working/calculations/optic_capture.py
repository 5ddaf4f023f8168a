"""A lens with its optic captured: the power stays, within limits that are shown."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.form import UNKNOWN, Calculation, Input, Kind, between
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.optics.inputs import EYES, PLANNED, same_eye
from chamberwise.engine.working.refusal import refused
from chamberwise.engine.working.sheet import Sheet

LEAST, MOST = Decimal("4.5"), Decimal("5.5")
"""Millimetres between which an opening holds a 6 mm optic."""

CAPTURE = Input(
    name="capture",
    meaning="optic pushed back through the opening, or brought in front of it",
    example="optic-behind",
    kind=Kind.WORD,
    words=("optic-behind", "optic-in-front"),
)
OPENING = Input(
    name="opening",
    meaning="diameter of the opening in the anterior capsule",
    example="5 mm",
    unit="mm",
    also=("cm",),
    hard=between("2", "9"),
    soft=between("4", "6"),
)
OPTIC = Input(
    name="optic",
    meaning="diameter of the optic",
    example="6 mm",
    unit="mm",
    also=("cm",),
    hard=between("5", "7"),
    soft=between("5.5", "6.5"),
)


def _condition(name: str, meaning: str, good: str) -> Input:
    words = ("yes", "no", UNKNOWN)
    return Input(name=name, meaning=meaning, example=good, kind=Kind.WORD, words=words)


CONDITIONS = (
    (_condition("edge-whole", "the edge of the opening is whole all round", "yes"), "yes"),
    (_condition("centred", "the opening is centred", "yes"), "yes"),
    (_condition("vitreous-in-plane", "vitreous lies in the plane of the opening", "no"), "no"),
)


def work(given: Given, sheet: Sheet) -> None:
    """Work how far the optic overlaps, and show the power in each position."""
    same_eye(given, sheet)
    for condition, good in CONDITIONS:
        _refuse_unless(given, condition, good)
    sheet.take("optic", given.number("optic"))
    sheet.take("opening", given.number("opening"))
    overlap = sheet.work("o", "optic wider than the opening", "optic - opening", "mm", 2)
    if overlap <= 0:
        raise refused(
            "opening",
            "the opening is as wide as the optic, or wider",
            "It cannot hold the optic.",
            "See `lens-to-sulcus` for a lens in the sulcus without capture.",
        )
    if not LEAST <= sheet["opening"] <= MOST:
        sheet.remark(
            f"An opening of {plain(LEAST)} to {plain(MOST)} mm holds a 6 mm optic (memory and "
            "common practice). This one lies outside that."
        )
    _powers(given, sheet)


def _refuse_unless(given: Given, condition: Input, good: str) -> None:
    said = given.word(condition.name)
    if said != good:
        raise refused(
            condition.name,
            f"capture needs `{condition.name}` to be {good}; it is {said}",
            "An optic that is not held lies at another depth, and may fall.",
            "What is unknown counts as not met. See `lens-to-sulcus` and `aphakia`.",
        )


def _powers(given: Given, sheet: Sheet) -> None:
    planned = given.number("planned-lens")
    if given.word("capture") == "optic-behind":
        sheet.say("The optic lies near the depth of the bag, so its power stays.")
        sheet.conclude("power", "power captured", planned, "D", 2)
    else:
        sheet.say("The optic lies in front of the opening: a small shift to short sight.")
        sheet.answer("power", "power captured", f"{plain(planned)} D, or 0.25 to 0.5 D less")
    half = Decimal("0.5")
    sheet.tabulate(
        "Where the optic lies",
        ("position", "power", "mark"),
        (
            ("optic behind the opening", f"{plain(planned)} D", "memory: no change"),
            (
                "as some surgeons do it",
                f"{plain(planned - half)} to {plain(planned)} D",
                "common practice: up to 0.5 D less",
            ),
            (
                "optic in front, haptics in the bag",
                f"{plain(planned - half)} to {plain(planned - half / 2)} D",
                "common practice, unsure: 0.25 to 0.5 D less",
            ),
            ("in the sulcus, not captured", "see `lens-to-sulcus`", "other sources"),
        ),
    )


CALCULATION = Calculation(
    name="optic-capture",
    title="Power of a lens with its optic captured",
    purpose="Whether the opening can hold the optic, and the power by position.",
    inputs=(
        CAPTURE,
        replace(PLANNED, meaning="power planned for the bag, of this lens model"),
        OPTIC,
        OPENING,
        *(condition for condition, _ in CONDITIONS),
        *EYES,
    ),
    sources=(citations.CAPTURE, citations.RULE_OF_NINES, citations.HABIT),
    limits=(
        "It does not know whether the optic will stay held.",
        "Plate, toric and multifocal lenses are outside it.",
    ),
    cautions=(
        "If the capture is lost the lens lies in the sulcus, and its power no longer fits.",
        "After a change of plan, lens model, power, place and eye are checked aloud anew.",
    ),
    work=work,
)
