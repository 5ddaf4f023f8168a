"""From the height of the infusion to the pressure of its column."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.form import Calculation, Input, between
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.sheet import Sheet

HEIGHT = Input(
    name="height",
    symbol="h",
    meaning=N_("from the eye up to the fluid level in the drip chamber"),
    example="60 cm",
    unit="cm",
    also=("mm", "in", "m"),
    bare=False,
    hard=between("5", "150"),
    soft=between("19", "110"),
    outside=N_("It is the height above the eye, not the pressure a pump was set to."),
)


def work(given: Given, sheet: Sheet) -> None:
    """Work the pressure of the standing column."""
    sheet.take("h", given.number("height"))
    pressure = sheet.work("p", _("pressure without flow"), "0.735559 * h", "mmHg", 4)
    sheet.conclude("pressure", _("pressure without flow, an upper guide"), pressure, "mmHg", 1)
    sheet.remark(
        _(
            "It is of fluid that stands still. Flow lowers it: in patients 70 to 90 cm "
            "with 20 mL/min measured 35 to 69 mmHg and fell by 41 %; 90 to 110 cm with 40 "
            "mL/min measured 34.5 to 85 mmHg and fell by 59 % (read)."
        )
    )
    sheet.remark(
        _(
            "In pigs' eyes 65 cm measured 50 to 60 mmHg and 19 cm 20 to 30 mmHg, above the "
            "arithmetic (read): levels or set-up added pressure."
        )
    )


CALCULATION = Calculation(
    name="infusion-pressure",
    title=N_("Infusion height to pressure"),
    purpose=N_("The pressure of the column of fluid above the eye."),
    inputs=(HEIGHT,),
    sources=(citations.HEAD, citations.PORCINE, citations.FLUIDICS),
    limits=(
        N_(
            "It does not know tubing, sleeve, flow or leakage, nor a pump with forced "
            "infusion, which sets mmHg directly."
        ),
        N_("The height shown on a console may be from another level than the eye."),
    ),
    cautions=(
        N_("For a small tear a lower column goes with lower flow, both together (read)."),
        N_("The pressure in the eye is not this figure."),
    ),
    work=work,
)
