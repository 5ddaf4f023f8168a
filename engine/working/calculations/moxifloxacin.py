"""Moxifloxacin into the chamber: four published strengths, each with a volume of its own."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.model.words import Mark
from chamberwise.engine.working import citations
from chamberwise.engine.working.doses.drug import drug_calculation
from chamberwise.engine.working.doses.recipe import Recipe, Step

UNDILUTED = Recipe(
    "undiluted", N_("0.5 %, free of preservative, undiluted"), Mark.READ, "5", (), "0.1", "0.1"
)
DILUTED = Recipe(
    "diluted",
    N_("0.5 % made up to 0.15 %"),
    Mark.READ,
    "5",
    (Step("3", "10", N_("balanced salt solution")),),
    "0.3",
    "0.4",
)
OLDER = Recipe("older", N_("0.1 %, an older series"), Mark.READ, "1", (), "0.1", "0.1")
BRAZIL = Recipe("at-5.45", N_("5.45 mg/mL"), Mark.READ, "5.45", (), "0.05", "0.05")

CALCULATION = drug_calculation(
    "moxifloxacin",
    N_("Moxifloxacin into the chamber"),
    (UNDILUTED, DILUTED, OLDER, BRAZIL),
    (
        N_(
            "The volume belongs to the strength: 0.3 to 0.4 mL of the undiluted 5 mg/mL "
            "would be 1.5 to 2 mg."
        ),
        N_("Allergy to quinolones. A product with additives may poison the front of the eye."),
        N_("Unlicensed for the chamber in many places."),
    ),
    (
        citations.MOXIFLOXACIN_ALERT,
        citations.MOXIFLOXACIN_DILUTED,
        citations.MOXIFLOXACIN_OLDER,
        citations.MOXIFLOXACIN_BRAZIL,
    ),
)
