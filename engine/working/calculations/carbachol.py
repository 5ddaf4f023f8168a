"""Carbachol to make the pupil small."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.model.words import Mark
from chamberwise.engine.working import citations
from chamberwise.engine.working.doses.drug import drug_calculation
from chamberwise.engine.working.doses.recipe import Recipe

VIAL = Recipe(
    "vial",
    N_("0.01 %, at most 0.5 mL; strongest after 2 to 5 minutes"),
    Mark.READ,
    "0.1",
    (),
    "0",
    "0.5",
)

CALCULATION = drug_calculation(
    "carbachol",
    N_("Carbachol to make the pupil small"),
    (VIAL,),
    (
        N_(
            "By its label care with acute heart failure, asthma, peptic ulcer, overactive "
            "thyroid, spasm of the gut, blocked urine flow, Parkinson's disease. The "
            "stopper holds latex."
        ),
    ),
    (citations.CARBACHOL,),
)
