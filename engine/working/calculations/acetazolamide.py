"""Acetazolamide into a vein: asked first, then made up, then counted over a day."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.doses.asked_first import question, refuse_if_any
from chamberwise.engine.working.doses.inputs import ALREADY, VOLUME
from chamberwise.engine.working.form import Calculation, between
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.sheet import Sheet

QUESTIONS = (
    question("sulphonamide-allergy", "allergy to sulphonamides"),
    question("severe-kidney-disease", "severe kidney disease"),
    question("severe-liver-disease", "severe liver disease"),
    question("adrenal-failure", "adrenal failure"),
    question("low-sodium-or-potassium", "low sodium or potassium"),
    question("hyperchloraemic-acidosis", "hyperchloraemic acidosis"),
    question("chronic-angle-closure", "chronic angle closure"),
)
WATER = replace(
    VOLUME,
    name="water",
    symbol="v",
    meaning="water for injections for the vial of 500 mg, at least 5 mL",
    example="5 mL",
    hard=between("5", "50"),
    given="5 mL",
    outside="The label asks for at least 5 mL.",
)
GIVEN = replace(ALREADY, meaning="acetazolamide given in the last 24 hours; 0 mg for none")


def work(given: Given, sheet: Sheet) -> None:
    """Refuse where a question is not answered by no; then work strength and what is left."""
    refuse_if_any(given, QUESTIONS, "The label names it as a contraindication.")
    sheet.take("v", given.number("water"))
    for place, amount in enumerate(given.numbers("already"), start=1):
        sheet.take(f"g{place}", amount)
    strength = sheet.work("c", "strength of the vial made up", "500 / v", "mg/mL")
    sheet.say(
        f"Read back: 500 mg with {plain(sheet['v'])} mL of water is {plain(strength)} mg/mL, for a "
        "vein."
    )
    written = " + ".join(f"g{place}" for place in range(1, len(given.numbers("already")) + 1))
    sheet.work("g", "given in 24 hours", written, "mg")
    left = sheet.work("left", "left to 1 g in 24 hours", "max(1000 - g, 0)", "mg")
    sheet.conclude("strength", "strength made up", strength, "mg/mL", 4)
    sheet.conclude("left", "left to 1 g in 24 hours", left, "mg", 1)
    sheet.tabulate(
        "The label's doses",
        ("dose", "amount", "volume of this strength"),
        [
            ("first, into a vein", "500 mg", f"{plain(sheet['v'])} mL"),
            ("then every 4 hours", "125 to 250 mg", _share(sheet)),
        ],
    )
    if left < 500:
        sheet.remark("A first dose of 500 mg would pass 1 g in 24 hours, which adds nothing.")


def _share(sheet: Sheet) -> str:
    return f"{plain(sheet['v'] / 4)} to {plain(sheet['v'] / 2)} mL"


CALCULATION = Calculation(
    name="acetazolamide",
    title="Acetazolamide into a vein",
    purpose="Contraindications first, then strength, the label's doses, and the day's sum.",
    inputs=(*QUESTIONS, GIVEN, WATER),
    sources=(citations.ACETAZOLAMIDE,),
    limits=(
        "It does not know kidney function, sodium, potassium, pregnancy or other drugs.",
        "It is of grown patients.",
    ),
    cautions=(
        "More than 1 g in 24 hours adds nothing, by the label.",
        "A second person derives it anew, and reads back mg, mL and mg/mL.",
    ),
    work=work,
)
