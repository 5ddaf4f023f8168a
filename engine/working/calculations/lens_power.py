"""Lens power by thin-lens vergence, for a lens whose place is known."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.optics import vergence
from chamberwise.engine.working.optics.by_formula import CAUTIONS, take_eye
from chamberwise.engine.working.optics.inputs import (
    AXIAL_LENGTH,
    EYES,
    KERATOMETRY,
    LENS_POSITION,
    STOCK,
    TARGET,
    VERTEX,
)
from chamberwise.engine.working.optics.stocked import leave
from chamberwise.engine.working.sheet import Sheet

THIN = (
    N_("It does not know where the lens will lie: the position is taken as it is given."),
    N_("Lens and cornea are taken as thin; no formula's own correction is in it."),
)


def work(given: Given, sheet: Sheet) -> None:
    """Work the power, and what the steps around it leave."""
    take_eye(given, sheet)
    sheet.take("ELP", given.number("lens-position"))
    sheet.take("V", given.number("vertex-distance"))
    exact = vergence.power(sheet)
    sheet.conclude("power", _("exact power"), exact, "D", 2)
    leave(sheet, exact, given.numbers("stock"), vergence.refraction)


CALCULATION = Calculation(
    name="lens-power",
    title=N_("Lens power by thin-lens vergence"),
    purpose=N_("The power that leaves the refraction aimed at, for a lens at a known place."),
    inputs=(AXIAL_LENGTH, KERATOMETRY, LENS_POSITION, TARGET, VERTEX, STOCK, *EYES),
    sources=(citations.OPTICS, citations.BAG_SULCUS_CHART),
    limits=THIN,
    cautions=CAUTIONS,
    work=work,
)
