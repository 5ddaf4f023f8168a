"""A lens in front of the iris or fixed to it: its power by its own constant, and its length."""

from __future__ import annotations

from dataclasses import replace
from decimal import ROUND_HALF_UP, Decimal

from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain, shown
from chamberwise.engine.working.form import Calculation, Input, Kind, Range, between
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.optics.by_formula import CAUTIONS, LIMITS, take_eye
from chamberwise.engine.working.optics.changed_constant import power_with
from chamberwise.engine.working.optics.inputs import (
    A_CONSTANT,
    AXIAL_LENGTH,
    EYES,
    KERATOMETRY,
    TARGET,
)
from chamberwise.engine.working.sheet import Sheet

ANGLE = "angle-supported"
USUAL = {
    ANGLE: (between("115", "115.8"), "memory: labels"),
    "iris-claw-front": (between("115", "115.7"), "read: 115 by ultrasound, 115.7 optical"),
    "iris-claw-behind": (between("116.7", "117.5"), "read"),
}
SHORTCUT_FOR = between("23", "25")
"""Lengths of eye in which the shortcut of 3 to 4 D is near what the constants give."""
HALF = Decimal("0.5")

FIXATION = Input(
    name="fixation",
    meaning="how the lens is held",
    example=ANGLE,
    kind=Kind.WORD,
    words=tuple(USUAL),
)
BAG_A = replace(
    A_CONSTANT,
    name="bag-a-constant",
    symbol="A1",
    meaning="A of the lens planned for the bag",
    required=False,
)
WHITE = Input(
    name="white-to-white",
    symbol="WTW",
    meaning="white to white across, in the meridian in which the lens will lie",
    example="12 mm",
    unit="mm",
    also=("cm",),
    hard=between("9", "15"),
    soft=between("10.5", "13"),
    required=False,
)


def work(given: Given, sheet: Sheet) -> None:
    """Work the power by the lens's own constant, the shortcut's error, and the length."""
    take_eye(given, sheet)
    own = given.number("a-constant")
    usual, mark = USUAL[given.word("fixation")]
    _compare_constant(sheet, own, usual, mark)
    sheet.head("Power by SRK/T with the lens's own constant")
    power = power_with(sheet, own)
    sheet.conclude("power", "power", power, "D", 2)
    if BAG_A.name in given:
        _shortcut(given, sheet, power)
    if WHITE.name in given and given.word("fixation") == ANGLE:
        _length(given, sheet)


def _compare_constant(sheet: Sheet, own: Decimal, usual: Range, mark: str) -> None:
    if own not in usual:
        sheet.remark(
            f"A-constant {plain(own)} is unusual for this fixation (usual: {plain(usual.low)} to "
            f"{plain(usual.high)}; {mark}). The label of the lens goes before this."
        )


def _shortcut(given: Given, sheet: Sheet, power: Decimal) -> None:
    sheet.head("Power by SRK/T for the bag")
    bag = power_with(sheet, given.number(BAG_A.name))
    sheet.take("Pb", bag)
    sheet.take("Pa", power)
    cost = sheet.work("c", "less than in the bag", "Pb - Pa", "D")
    sheet.conclude("less", "less than in the bag", cost, "D", 2)
    rows = [("by SRK/T", f"{shown(power, 2)} D")]
    if sheet["AL"] in SHORTCUT_FOR:
        rows.append(("3 to 4 D less (shortcut)", f"{shown(bag - 4, 2)} to {shown(bag - 3, 2)} D"))
    else:
        sheet.remark(
            "The shortcut of 3 to 4 D less is not shown: outside 23 to 25 mm it misses by more "
            "than half a dioptre."
        )
    sheet.tabulate("Side by side", ("way", "power"), rows)


def _length(given: Given, sheet: Sheet) -> None:
    sheet.head("Length of the lens")
    sheet.take("WTW", given.number(WHITE.name))
    exact = sheet.work("Ls", "length by the rule", "WTW + 1", "mm", 2)
    step = (exact / HALF).quantize(Decimal(1), rounding=ROUND_HALF_UP) * HALF
    sheet.say(f"The nearest half millimetre is {plain(step)} mm.")
    sheet.conclude("length", "length, nearest half millimetre", step, "mm", 1)
    sheet.remark(
        "White to white plus 1 mm is common practice; its accuracy was doubted in 1979 by "
        "measuring cadaver eyes (read). A lens that turns is short; a peaked pupil or pain "
        "means it is long or holds iris (common practice)."
    )


CALCULATION = Calculation(
    name="anterior-chamber-lens",
    title="Anterior-chamber or iris-held lens: power and length",
    purpose="The power by the lens's own constant, and the length of an angle-supported one.",
    inputs=(FIXATION, AXIAL_LENGTH, KERATOMETRY, A_CONSTANT, TARGET, BAG_A, WHITE, *EYES),
    sources=(
        citations.SRK_T,
        citations.CHAMBER_LABELS,
        citations.IRIS_CLAW,
        citations.WHITE_TO_WHITE,
        citations.HABIT,
    ),
    limits=(*LIMITS[:2], "It does not know the true width of the chamber."),
    cautions=(
        "Such a lens wants an iridotomy, a chamber free of vitreous, a small pupil, and a healthy "
        "angle and endothelium; shallow chamber, few cells, closed angle, synechiae, new vessels "
        "and youth speak against it (common practice).",
        *CAUTIONS,
    ),
    work=work,
)
