"""Mannitol into a vein: asked first, then by weight."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.doses.asked_first import question, refuse_if_any
from chamberwise.engine.working.doses.inputs import STRENGTH, WEIGHT
from chamberwise.engine.working.form import Calculation, Input, Kind, between
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.sheet import Sheet

OF_LABEL = (
    question("anuria", "no urine is made"),
    question("severe-hypovolaemia", "severe lack of volume"),
    question("pulmonary-oedema", "oedema or congestion of the lungs"),
    question("intracranial-bleed", "active bleeding in the head"),
    question("hypersensitivity", "hypersensitivity to mannitol"),
)
WEIGHED = (
    question("heart-failure", "heart failure"),
    question("kidney-impairment", "impaired kidneys"),
)
RANGES = {
    "label": ("1.5", "2", "US label, over at least 30 minutes, 60 to 90 minutes before (read)"),
    "older-range": (
        "0.25",
        "2",
        "older formulary range, over 30 to 60 minutes (read, second-hand)",
    ),
    "theatre-habit": ("0.5", "1", "habit of theatres (common practice, unsure)"),
}
RANGE = Input(
    name="range",
    meaning="; ".join(f"{name}: {low} to {high} g/kg" for name, (low, high, _) in RANGES.items()),
    example="label",
    kind=Kind.WORD,
    words=tuple(RANGES),
)
SOLUTION = replace(
    STRENGTH,
    meaning="strength of the solution",
    example="20 %",
    hard=between("50", "250"),
    soft=between("100", "200"),
    outside="Mannitol comes as 5 % to 25 %, that is 50 to 250 mg/mL.",
    required=True,
)


def work(given: Given, sheet: Sheet) -> None:
    """Refuse where a question is not answered by no; then work amounts and volumes."""
    refuse_if_any(given, OF_LABEL, "The label names it as a contraindication.")
    refuse_if_any(given, WEIGHED, "Heart and kidneys are weighed by a physician before any figure.")
    low, high, source = RANGES[given.word("range")]
    sheet.head(source)
    sheet.take("w", given.number("weight"))
    sheet.take("c", given.number("strength"))
    for end, each_kg in (("low", low), ("high", high)):
        sheet.take("d", each_kg)
        amount = sheet.work("m", f"{each_kg} g/kg", "d * w", "g", 2)
        volume = sheet.work("v", "volume of this solution", "1000 * m / c", "mL", 2)
        sheet.conclude(f"{end}-amount", f"{each_kg} g/kg", amount, "g", 1)
        sheet.conclude(f"{end}-volume", f"volume of {each_kg} g/kg", volume, "mL", 1)
    fastest = sheet.work("f", "the larger volume over 30 minutes", "v / 30", "mL/min", 2)
    sheet.say(
        f"Read back: {plain(sheet['w'])} kg, {low} to {high} g/kg, a solution of "
        f"{plain(sheet['c'])} mg/mL, no faster than {plain(fastest)} mL/min."
    )


CALCULATION = Calculation(
    name="mannitol",
    title="Mannitol into a vein",
    purpose="Contraindications first, then amount and volume by weight.",
    inputs=(*OF_LABEL, *WEIGHED, WEIGHT, SOLUTION, RANGE),
    sources=(citations.MANNITOL, citations.MANNITOL_OLDER, citations.HABIT),
    limits=(
        "It does not know kidney function, salts, age, or fluid given before.",
        "It is of grown patients.",
    ),
    cautions=(
        "The bladder fills under the drapes.",
        "Cold solutions crystallise: see the label.",
        "A second person derives it anew, and reads back g, mL and mg/mL.",
    ),
    work=work,
)
