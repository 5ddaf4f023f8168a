"""A lens in front of the iris or fixed to it: its power by its own constant, and its length."""

from __future__ import annotations

from dataclasses import replace
from decimal import ROUND_HALF_UP, Decimal

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain, shown
from chamberwise.engine.working.form import Calculation, Input, Kind, Range, between
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.marks import told_mark
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
    ANGLE: (between("115", "115.8"), N_("memory: labels")),
    "iris-claw-front": (between("115", "115.7"), N_("read: 115 by ultrasound, 115.7 optical")),
    "iris-claw-behind": (between("116.7", "117.5"), "read"),
}
SHORTCUT_FOR = between("23", "25")
"""Lengths of eye in which the shortcut of 3 to 4 D is near what the constants give."""
HALF = Decimal("0.5")

FIXATION = Input(
    name="fixation",
    meaning=N_("how the lens is held"),
    example=ANGLE,
    kind=Kind.WORD,
    words=tuple(USUAL),
)
BAG_A = replace(
    A_CONSTANT,
    name="bag-a-constant",
    symbol="A1",
    meaning=N_("A of the lens planned for the bag"),
    required=False,
)
WHITE = Input(
    name="white-to-white",
    symbol="WTW",
    meaning=N_("white to white across, in the meridian in which the lens will lie"),
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
    sheet.head(_("Power by SRK/T with the lens's own constant"))
    power = power_with(sheet, own)
    sheet.conclude("power", _("power"), power, "D", 2)
    if BAG_A.name in given:
        _shortcut(given, sheet, power)
    if WHITE.name in given and given.word("fixation") == ANGLE:
        _length(given, sheet)


def _compare_constant(sheet: Sheet, own: Decimal, usual: Range, mark: str) -> None:
    if own not in usual:
        sheet.remark(
            _(
                "A-constant {own} is unusual for this fixation (usual: {low} to {high}; "
                "{mark}). The label of the lens goes before this."
            ).format(
                own=plain(own), low=plain(usual.low), high=plain(usual.high), mark=told_mark(mark)
            )
        )


def _shortcut(given: Given, sheet: Sheet, power: Decimal) -> None:
    sheet.head(_("Power by SRK/T for the bag"))
    bag = power_with(sheet, given.number(BAG_A.name))
    sheet.take("Pb", bag)
    sheet.take("Pa", power)
    cost = sheet.work("c", _("less than in the bag"), "Pb - Pa", "D")
    sheet.conclude("less", _("less than in the bag"), cost, "D", 2)
    rows = [(_("by SRK/T"), _("{power} D").format(power=shown(power, 2)))]
    if sheet["AL"] in SHORTCUT_FOR:
        rows.append(
            (
                _("3 to 4 D less (shortcut)"),
                _("{low} to {high} D").format(low=shown(bag - 4, 2), high=shown(bag - 3, 2)),
            )
        )
    else:
        sheet.remark(
            _(
                "The shortcut of 3 to 4 D less is not shown: outside 23 to 25 mm it misses by "
                "more than half a dioptre."
            )
        )
    sheet.tabulate(_("Side by side"), (N_("way"), N_("power")), rows)


def _length(given: Given, sheet: Sheet) -> None:
    sheet.head(_("Length of the lens"))
    sheet.take("WTW", given.number(WHITE.name))
    exact = sheet.work("Ls", _("length by the rule"), "WTW + 1", "mm", 2)
    step = (exact / HALF).quantize(Decimal(1), rounding=ROUND_HALF_UP) * HALF
    sheet.say(_("The nearest half millimetre is {step} mm.").format(step=plain(step)))
    sheet.conclude("length", _("length, nearest half millimetre"), step, "mm", 1)
    sheet.remark(
        _(
            "White to white plus 1 mm is common practice; its accuracy was doubted in 1979 "
            "by measuring cadaver eyes (read). A lens that turns is short; a peaked pupil "
            "or pain means it is long or holds iris (common practice)."
        )
    )


CALCULATION = Calculation(
    name="anterior-chamber-lens",
    title=N_("Anterior-chamber or iris-held lens: power and length"),
    purpose=N_("The power by the lens's own constant, and the length of an angle-supported one."),
    inputs=(FIXATION, AXIAL_LENGTH, KERATOMETRY, A_CONSTANT, TARGET, BAG_A, WHITE, *EYES),
    sources=(
        citations.SRK_T,
        citations.CHAMBER_LABELS,
        citations.IRIS_CLAW,
        citations.WHITE_TO_WHITE,
        citations.HABIT,
    ),
    limits=(*LIMITS[:2], N_("It does not know the true width of the chamber.")),
    cautions=(
        N_(
            "Such a lens wants an iridotomy, a chamber free of vitreous, a small pupil, "
            "and a healthy angle and endothelium; shallow chamber, few cells, closed "
            "angle, synechiae, new vessels and youth speak against it (common practice)."
        ),
        *CAUTIONS,
    ),
    work=work,
)
