"""Acetazolamide into a vein: asked first, then made up, then counted over a day."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.doses.asked_first import question, refuse_if_any
from chamberwise.engine.working.doses.inputs import ALREADY, VOLUME
from chamberwise.engine.working.form import Calculation, between
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.sheet import Sheet

QUESTIONS = (
    question("sulphonamide-allergy", N_("allergy to sulphonamides")),
    question("severe-kidney-disease", N_("severe kidney disease")),
    question("severe-liver-disease", N_("severe liver disease")),
    question("adrenal-failure", N_("adrenal failure")),
    question("low-sodium-or-potassium", N_("low sodium or potassium")),
    question("hyperchloraemic-acidosis", N_("hyperchloraemic acidosis")),
    question("chronic-angle-closure", N_("chronic angle closure")),
)
WATER = replace(
    VOLUME,
    name="water",
    symbol="v",
    meaning=N_("water for injections for the vial of 500 mg, at least 5 mL"),
    example="5 mL",
    hard=between("5", "50"),
    given="5 mL",
    outside=N_("The label asks for at least 5 mL."),
)
GIVEN = replace(ALREADY, meaning=N_("acetazolamide given in the last 24 hours; 0 mg for none"))


def work(given: Given, sheet: Sheet) -> None:
    """Refuse where a question is not answered by no; then work strength and what is left."""
    refuse_if_any(given, QUESTIONS, _("The label names it as a contraindication."))
    sheet.take("v", given.number("water"))
    for place, amount in enumerate(given.numbers("already"), start=1):
        sheet.take(f"g{place}", amount)
    strength = sheet.work("c", _("strength of the vial made up"), "500 / v", "mg/mL")
    sheet.say(
        _("Read back: 500 mg with {v} mL of water is {strength} mg/mL, for a vein.").format(
            v=plain(sheet["v"]), strength=plain(strength)
        )
    )
    written = " + ".join(f"g{place}" for place in range(1, len(given.numbers("already")) + 1))
    sheet.work("g", _("given in 24 hours"), written, "mg")
    left = sheet.work("left", _("left to 1 g in 24 hours"), "max(1000 - g, 0)", "mg")
    sheet.conclude("strength", _("strength made up"), strength, "mg/mL", 4)
    sheet.conclude("left", _("left to 1 g in 24 hours"), left, "mg", 1)
    sheet.tabulate(
        _("The label's doses"),
        (N_("dose"), N_("amount"), N_("volume of this strength")),
        [
            (_("first, into a vein"), _("500 mg"), _("{v} mL").format(v=plain(sheet["v"]))),
            (_("then every 4 hours"), _("125 to 250 mg"), _share(sheet)),
        ],
    )
    if left < 500:
        sheet.remark(_("A first dose of 500 mg would pass 1 g in 24 hours, which adds nothing."))


def _share(sheet: Sheet) -> str:
    return _("{low} to {high} mL").format(low=plain(sheet["v"] / 4), high=plain(sheet["v"] / 2))


CALCULATION = Calculation(
    name="acetazolamide",
    title=N_("Acetazolamide into a vein"),
    purpose=N_("Contraindications first, then strength, the label's doses, and the day's sum."),
    inputs=(*QUESTIONS, GIVEN, WATER),
    sources=(citations.ACETAZOLAMIDE,),
    limits=(
        N_("It does not know kidney function, sodium, potassium, pregnancy or other drugs."),
        N_("It is of grown patients."),
    ),
    cautions=(
        N_("More than 1 g in 24 hours adds nothing, by the label."),
        N_("A second person derives it anew, and reads back mg, mL and mg/mL."),
    ),
    work=work,
)
