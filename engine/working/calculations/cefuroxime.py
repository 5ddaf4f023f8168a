"""Cefuroxime into the chamber, 1 mg in 0.1 mL."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.model.words import Mark
from chamberwise.engine.working import citations
from chamberwise.engine.working.doses.drug import drug_calculation
from chamberwise.engine.working.doses.recipe import Powder, Recipe, Step

SALINE = N_("sodium chloride 0.9 %")
UNLICENSED = N_(
    "Unlicensed. A product whose label warns against use in the eye is never "
    "taken. What the powder displaces is taken off the solvent: see the label."
)
LICENSED = Recipe(
    "licensed-vial",
    N_("the licensed vial of 50 mg, for one eye"),
    Mark.READ,
    Powder("50", "5", SALINE),
    (),
    "0.1",
    "0.1",
)
ONE_STEP = Recipe(
    "from-750-one-step",
    N_("from 750 mg in one step"),
    Mark.COMMON_PRACTICE,
    Powder("750", "75", SALINE),
    (),
    "0.1",
    "0.1",
    note=UNLICENSED,
)
TWO_STEPS = Recipe(
    "from-750-two-steps",
    N_("from 750 mg in two steps"),
    Mark.COMMON_PRACTICE,
    Powder("750", "7.5", SALINE),
    (Step("1", "10", SALINE),),
    "0.1",
    "0.1",
    note=UNLICENSED,
)

CALCULATION = drug_calculation(
    "cefuroxime",
    N_("Cefuroxime into the chamber"),
    (LICENSED, ONE_STEP, TWO_STEPS),
    (
        N_(
            "Contraindicated by its label: allergy to cephalosporins. Care with allergy to "
            "penicillin, risk of MRSA, fewer than 2,000 endothelial cells, complicated "
            "cases."
        ),
        N_("Tenfold slips happen: 9 mg in 13 eyes gave macular oedema in 6 (read)."),
        N_(
            "Mixing in syringes of 1 mL is inaccurate: aiming at 1 mg, medians of 1.17 mg "
            "(0.62 to 1.77) with 12.5 mL and 2.05 mg (0.52 to 7.25) with 2.5 mL of diluent "
            "(read)."
        ),
    ),
    (citations.CEFUROXIME, citations.CEFUROXIME_SLIP, citations.CEFUROXIME_ALERT, citations.HABIT),
)
