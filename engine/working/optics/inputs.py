"""What the calculations of lens power take, and the eye it is of."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.form import Input, Kind, between
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.refusal import refused
from chamberwise.engine.working.sheet import Sheet

AXIAL_LENGTH = Input(
    name="axial-length",
    symbol="AL",
    meaning=N_("length of the eye"),
    example="23.5 mm",
    unit="mm",
    also=("cm", "in"),
    hard=between("15", "40"),
    soft=between("20", "30"),
)
KERATOMETRY = Input(
    name="keratometry",
    symbol="K",
    meaning=N_("power of the cornea, mean of both meridians, index 1.3375"),
    example="43.5 D",
    unit="D",
    also=("mm",),
    is_curvature=True,
    hard=between("30", "60"),
    soft=between("39", "49"),
    slip=(
        between("5", "11"),
        N_('It looks like a radius in mm. If it is one, say so with its unit: `K="{typed} mm"`.'),
    ),
)
A_CONSTANT = Input(
    name="a-constant",
    symbol="A",
    meaning=N_("the lens's A-constant, as the unit uses it"),
    example="118.7",
    hard=between("110", "122"),
    soft=between("114", "120"),
    outside=N_("It stands on the lens box or in the unit's list of constants."),
)
TARGET = Input(
    name="target",
    symbol="Rx",
    meaning=N_("refraction aimed at, at the spectacles"),
    example="-0.25 D",
    unit="D",
    hard=between("-10", "6"),
    soft=between("-3", "1"),
    outside=N_("Write the sign: a short-sighted aim is below 0."),
)
VERTEX = Input(
    name="vertex-distance",
    symbol="V",
    meaning=N_("from the spectacles to the cornea"),
    example="12 mm",
    unit="mm",
    also=("cm",),
    hard=between("10", "15"),
    required=False,
    given="12 mm",
)
LENS_POSITION = Input(
    name="lens-position",
    symbol="ELP",
    meaning=N_("from the cornea to the lens (effective lens position)"),
    example="5.2 mm",
    unit="mm",
    also=("cm",),
    hard=between("2.5", "8"),
    soft=between("3.5", "6.5"),
    outside=N_("It is no chamber depth before surgery and no lens constant."),
)
LENS = Input(
    name="lens",
    symbol="P",
    meaning=N_("power of the lens"),
    example="21 D",
    unit="D",
    hard=between("-15", "50"),
    soft=between("5", "34"),
)
PLANNED = replace(LENS, name="planned-lens", symbol="P", meaning=N_("power planned for the bag"))
STOCK = Input(
    name="stock",
    meaning=N_("powers on the shelf, blanks between them; without it, steps of 0.5 D"),
    example="20.5 21 21.5 D",
    kind=Kind.SEVERAL,
    unit="D",
    hard=between("-15", "50"),
    required=False,
)
EYE = Input(
    name="eye",
    meaning=N_("the eye to be operated on"),
    example="right",
    kind=Kind.WORD,
    words=("right", "left"),
    required=False,
)
BIOMETRY_EYE = replace(EYE, name="biometry-eye", meaning=N_("the eye that was measured"))
EYES = (EYE, BIOMETRY_EYE)


def same_eye(given: Given, sheet: Sheet) -> None:
    """Compare the eye measured with the eye to be operated on. Raises `RefusedError`."""
    operated, measured = given.word("eye"), given.word("biometry-eye")
    if operated and measured and operated != measured:
        raise refused(
            "biometry-eye",
            _("the right eye was measured, the left eye is to be operated on")
            if measured == "right"
            else _("the left eye was measured, the right eye is to be operated on"),
            _("A power worked from the other eye's figures is another eye's power."),
            _("Take the figures of the eye to be operated on."),
        )
    if not (operated and measured):
        sheet.remark(
            _(
                "Which eye was measured and which is to be operated on was not said, so the "
                "two were not compared. `eye` and `biometry-eye` let them be."
            )
        )
