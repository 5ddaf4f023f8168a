"""Acetylcholine to make the pupil small."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.model.words import Mark
from chamberwise.engine.working import citations
from chamberwise.engine.working.doses.drug import drug_calculation
from chamberwise.engine.working.doses.recipe import Powder, Recipe

VIAL = Recipe(
    "vial",
    N_("20 mg made up to 2 mL, at once before use, after the lens is out"),
    Mark.READ,
    Powder("20", "2", N_("its own diluent")),
    (),
    "0.5",
    "2",
    note=N_("The filter takes 0.6 mL of the 2 mL."),
)

CALCULATION = drug_calculation(
    "acetylcholine",
    N_("Acetylcholine to make the pupil small"),
    (VIAL,),
    (
        N_(
            "Contraindicated by its label: hypersensitivity. Rarely slow pulse, low "
            "pressure, bronchospasm; the label names atropine 0.5 to 1 mg as antidote."
        ),
    ),
    (citations.ACETYLCHOLINE,),
)
