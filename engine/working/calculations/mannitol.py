"""Mannitol into a vein: asked first, then by weight."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working import citations
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.doses.asked_first import question, refuse_if_any
from chamberwise.engine.working.doses.inputs import STRENGTH, WEIGHT
from chamberwise.engine.working.form import Calculation, Input, Kind, between, meaning_of
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.sheet import Sheet

OF_LABEL = (
    question("anuria", N_("no urine is made")),
    question("severe-hypovolaemia", N_("severe lack of volume")),
    question("pulmonary-oedema", N_("oedema or congestion of the lungs")),
    question("intracranial-bleed", N_("active bleeding in the head")),
    question("hypersensitivity", N_("hypersensitivity to mannitol")),
)
WEIGHED = (
    question("heart-failure", N_("heart failure")),
    question("kidney-impairment", N_("impaired kidneys")),
)
RANGES = {
    "label": ("1.5", "2", N_("US label, over at least 30 minutes, 60 to 90 minutes before (read)")),
    "older-range": (
        "0.25",
        "2",
        N_("older formulary range, over 30 to 60 minutes (read, second-hand)"),
    ),
    "theatre-habit": ("0.5", "1", N_("habit of theatres (common practice, unsure)")),
}
AMOUNTS = (
    ("label", N_("1.5 to 2 g/kg")),
    ("older-range", N_("0.25 to 2 g/kg")),
    ("theatre-habit", N_("0.5 to 1 g/kg")),
)
RANGE = Input(
    name="range",
    meaning=meaning_of(AMOUNTS),
    choices=AMOUNTS,
    example="label",
    kind=Kind.WORD,
    words=tuple(RANGES),
)
SOLUTION = replace(
    STRENGTH,
    meaning=N_("strength of the solution"),
    example="20 %",
    hard=between("50", "250"),
    soft=between("100", "200"),
    outside=N_("Mannitol comes as 5 % to 25 %, that is 50 to 250 mg/mL."),
    required=True,
)


def work(given: Given, sheet: Sheet) -> None:
    """Refuse where a question is not answered by no; then work amounts and volumes."""
    refuse_if_any(given, OF_LABEL, _("The label names it as a contraindication."))
    refuse_if_any(
        given, WEIGHED, _("Heart and kidneys are weighed by a physician before any figure.")
    )
    low, high, source = RANGES[given.word("range")]
    sheet.head(_(source))
    sheet.take("w", given.number("weight"))
    sheet.take("c", given.number("strength"))
    for end, each_kg in (("low", low), ("high", high)):
        sheet.take("d", each_kg)
        amount = sheet.work(
            "m", _("{each_kg} g/kg").format(each_kg=decimal(each_kg)), "d * w", "g", 2
        )
        volume = sheet.work("v", _("volume of this solution"), "1000 * m / c", "mL", 2)
        sheet.conclude(
            f"{end}-amount", _("{each_kg} g/kg").format(each_kg=decimal(each_kg)), amount, "g", 1
        )
        sheet.conclude(
            f"{end}-volume",
            _("volume of {each_kg} g/kg").format(each_kg=decimal(each_kg)),
            volume,
            "mL",
            1,
        )
    fastest = sheet.work("f", _("the larger volume over 30 minutes"), "v / 30", "mL/min", 2)
    sheet.say(
        _(
            "Read back: {w} kg, {low} to {high} g/kg, a solution of {c} mg/mL, no faster "
            "than {fastest} mL/min."
        ).format(
            w=plain(sheet["w"]),
            low=decimal(low),
            high=decimal(high),
            c=plain(sheet["c"]),
            fastest=plain(fastest),
        )
    )


CALCULATION = Calculation(
    name="mannitol",
    title=N_("Mannitol into a vein"),
    purpose=N_("Contraindications first, then amount and volume by weight."),
    inputs=(*OF_LABEL, *WEIGHED, WEIGHT, SOLUTION, RANGE),
    sources=(citations.MANNITOL, citations.MANNITOL_OLDER, citations.HABIT),
    limits=(
        N_("It does not know kidney function, salts, age, or fluid given before."),
        N_("It is of grown patients."),
    ),
    cautions=(
        N_("The bladder fills under the drapes."),
        N_("Cold solutions crystallise: see the label."),
        N_("A second person derives it anew, and reads back g, mL and mg/mL."),
    ),
    work=work,
)
