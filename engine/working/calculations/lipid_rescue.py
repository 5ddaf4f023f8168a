"""Lipid emulsion after local anaesthetic toxicity: the guideline's figures by weight."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.doses.inputs import WEIGHT
from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.sheet import Sheet


def work(given: Given, sheet: Sheet) -> None:
    """Work bolus, rate and ceiling."""
    sheet.take("w", given.number("weight"))
    bolus = sheet.work("b", _("bolus, 1.5 mL/kg"), "1.5 * w", "mL", 2)
    rate = sheet.work("r", _("rate, 15 mL/kg in an hour"), "15 * w / 60", "mL/min", 2)
    ceiling = sheet.work("M", _("ceiling, 12 mL/kg"), "12 * w", "mL", 2)
    sheet.conclude("bolus", _("bolus"), bolus, "mL", 1)
    sheet.conclude("rate", _("rate"), rate, "mL/min", 2)
    sheet.conclude("ceiling", _("ceiling, all together"), ceiling, "mL", 1)
    sheet.say(_("Read back: kg, mL of bolus, mL/min, mL of ceiling; lipid emulsion 20 %."))


CALCULATION = Calculation(
    name="lipid-rescue",
    title=N_("Lipid emulsion 20 % after local anaesthetic toxicity"),
    purpose=N_("Bolus, rate and ceiling of the guideline, by weight, for a rehearsal."),
    inputs=(WEIGHT,),
    sources=(citations.LIPID,),
    limits=(
        N_("It does not know the patient, the pregnancy, or what else was given."),
        N_("Propofol is no lipid emulsion for this."),
    ),
    cautions=(
        N_(
            "Help, airway and the unit's own emergency card come first; it is worked "
            "beforehand, for the box and the rehearsal."
        ),
    ),
    work=work,
)
