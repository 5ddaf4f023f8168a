"""The refraction that a lens leaves, by thin-lens vergence."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.calculations.lens_power import THIN
from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.optics import vergence
from chamberwise.engine.working.optics.by_formula import CAUTIONS
from chamberwise.engine.working.optics.inputs import (
    AXIAL_LENGTH,
    EYES,
    KERATOMETRY,
    LENS,
    LENS_POSITION,
    VERTEX,
    same_eye,
)
from chamberwise.engine.working.sheet import Sheet


def work(given: Given, sheet: Sheet) -> None:
    """Work the refraction."""
    same_eye(given, sheet)
    sheet.take("AL", given.number("axial-length"))
    sheet.take("K", given.number("keratometry"))
    sheet.take("P", given.number("lens"))
    sheet.take("ELP", given.number("lens-position"))
    sheet.take("V", given.number("vertex-distance"))
    left = vergence.refraction(sheet)
    sheet.conclude("refraction", _("refraction left, at the spectacles"), left, "D", 2, sign=True)


CALCULATION = Calculation(
    name="refraction-left",
    title=N_("Refraction that a lens leaves, by thin-lens vergence"),
    purpose=N_("What a lens of some power, at a known place, leaves at the spectacles."),
    inputs=(AXIAL_LENGTH, KERATOMETRY, LENS, LENS_POSITION, VERTEX, *EYES),
    sources=(citations.OPTICS,),
    limits=THIN,
    cautions=CAUTIONS,
    work=work,
)
