"""Triamcinolone to show vitreous."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.model.words import Mark
from chamberwise.engine.working import citations
from chamberwise.engine.working.doses.drug import drug_calculation
from chamberwise.engine.working.doses.recipe import Recipe, Step

CHAMBER = Recipe(
    "chamber",
    N_("into the chamber, ten-fold diluted"),
    Mark.COMMON_PRACTICE,
    "40",
    (Step("0.1", "1", N_("balanced salt solution")),),
    "0.1",
    "0.2",
    note=N_("What is seen to be in excess is washed out."),
)
LABEL = Recipe(
    "label-vitreous",
    N_("into the vitreous cavity, undiluted, shaken 10 s, used at once"),
    Mark.READ,
    "40",
    (),
    "0.025",
    "0.1",
    note=N_("The label's amounts are for the vitreous cavity; the chamber's are smaller."),
)

CALCULATION = drug_calculation(
    "triamcinolone",
    N_("Triamcinolone to show vitreous"),
    (CHAMBER, LABEL),
    (
        N_("Contraindicated by its label: hypersensitivity, systemic fungal infection."),
        N_(
            "A preserved product is washed or avoided: benzyl alcohol is unproven in the "
            "chamber. Steroid may raise the pressure."
        ),
        N_("Unlicensed for the chamber."),
    ),
    (citations.TRIAMCINOLONE, citations.TRIAMCINOLONE_WASHED, citations.HABIT),
)
