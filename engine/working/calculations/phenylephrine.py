"""Phenylephrine into the chamber: alone, or in the licensed combination."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.model.words import Mark
from chamberwise.engine.working import citations
from chamberwise.engine.working.doses.drug import drug_calculation
from chamberwise.engine.working.doses.recipe import Recipe, Step

TRIAL = Recipe(
    "trial",
    N_("1.5 %, free of preservative and bisulphite, as in a trial"),
    Mark.READ,
    "15",
    (),
    "0.6",
    "0.6",
)
FROM_DROPS = Recipe(
    "from-2.5-percent",
    N_("0.25 mL of 2.5 % in 1.25 mL, a workaround"),
    Mark.READ,
    "25",
    (Step("0.25", "1.5", N_("balanced salt solution")),),
    "1.5",
    "1.5",
    note=N_("The product of 2.5 % contains bisulphite, which is toxic to the endothelium."),
)
COMBINED = Recipe(
    "combined",
    N_("licensed tropicamide 0.02 %, phenylephrine 0.31 %, lidocaine 1 %; once, at the start"),
    Mark.READ,
    "3.1",
    (),
    "0.2",
    "0.2",
    beside=((N_("tropicamide"), "0.2"), (N_("lidocaine"), "10")),
    note=N_(
        "By its label only where drops dilated the pupil before; not with a shallow "
        "chamber or past angle closure, and not with vitrectomy; never repeated. Its "
        "lidocaine counts for the ceiling."
    ),
)

CALCULATION = drug_calculation(
    "phenylephrine",
    N_("Phenylephrine into the chamber"),
    (TRIAL, FROM_DROPS, COMBINED),
    (N_("Hypertension, severe heart disease, aneurysm. Bisulphite is toxic to the endothelium."),),
    (
        citations.PHENYLEPHRINE_TRIAL,
        citations.PHENYLEPHRINE_POSTER,
        citations.COMBINED_MYDRIATIC,
    ),
)
