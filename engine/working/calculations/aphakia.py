"""What an eye is left with when no lens is put in."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.optics import vergence
from chamberwise.engine.working.optics.inputs import (
    AXIAL_LENGTH,
    EYES,
    KERATOMETRY,
    VERTEX,
    same_eye,
)
from chamberwise.engine.working.sheet import Sheet


def work(given: Given, sheet: Sheet) -> None:
    """Work the refraction of the eye without a lens."""
    same_eye(given, sheet)
    sheet.take("AL", given.number("axial-length"))
    sheet.take("K", given.number("keratometry"))
    sheet.take("V", given.number("vertex-distance"))
    sheet.say(_("Without a lens the cornea alone brings light to the retina."))
    sheet.work("z", _("vergence needed behind the cornea"), "1336 / AL", "D")
    left = vergence.at_spectacles(sheet)
    sheet.conclude("refraction", _("refraction left, at the spectacles"), left, "D", 2, sign=True)


CALCULATION = Calculation(
    name="aphakia",
    title=N_("What aphakia leaves"),
    purpose=N_("The refraction of the eye while no lens is in it."),
    inputs=(AXIAL_LENGTH, KERATOMETRY, VERTEX, *EYES),
    sources=(citations.OPTICS,),
    limits=(
        N_(
            "It does not know the cornea after the operation: sutures and a larger wound change it."
        ),
        N_("It says nothing of how well the eye would see."),
    ),
    cautions=(N_("It is for telling what to expect, not for prescribing spectacles."),),
    work=work,
)
