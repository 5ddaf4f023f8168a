"""Situations of vitreous: in the chamber, at a wound, in doubt, and without a cutter."""

from __future__ import annotations

from tests.conformance.situation import rupture, vitrectomy
from tests.conformance.situations_begin import ANY_LENS

IN_CHAMBER = {"vitreous": "in-chamber, none"}
AT_WOUND = {"vitreous": "at-wound, none"}
CUTS = (
    "separate-ports place-infusion-low start-cutting-before-aspiration insert-cutter cut-vitreous"
)
LEAVES = "fill-with-dispersive-viscoelastic withdraw-cutter fill-with-dispersive-viscoelastic"
PROVES = "withdraw-infusion read-stain-aloud stain-with-triamcinolone"
NO_CUTTER = {"cutter": "not-in-the-building", "lens": "none"}

VITREOUS = (
    rupture(
        "Vitreous in the chamber",
        IN_CHAMBER,
        "lens-in-vitreous-lost",
        does=f"lower-infusion stain-with-triamcinolone {CUTS} {LEAVES} {PROVES} suture-main-wound "
        "book-two-week-retinal-look book-six-week-retinal-look",
        never="enter-through-pars-plana",
    ),
    rupture(
        "Vitreous at the wound",
        AT_WOUND,
        "lens-in-vitreous-lost",
        does=f"hold-vitreous-back free-wound-of-vitreous suture-main-wound {CUTS} {PROVES}",
    ),
    rupture(
        "Main wound leaks before the vitrectomy",
        IN_CHAMBER | {"main-wound": "leaking"},
        "lens-in-vitreous-lost",
        does=f"suture-main-wound {CUTS}",
    ),
    rupture(
        "Nobody can tell whether the main wound is tight",
        IN_CHAMBER | {"main-wound": "cannot tell"},
        "lens-in-vitreous-lost",
        does=f"suture-main-wound {CUTS}",
    ),
    rupture(
        "Pars plana is the unit's way and the operator is trained",
        IN_CHAMBER | {"trained-pars-plana": "trained"},
        "lens-in-vitreous-lost",
        does="separate-ports enter-through-pars-plana place-infusion-low cut-vitreous "
        "suture-pars-plana-port",
    ),
    rupture(
        "Nobody can tell whether the operator is signed off for pars plana",
        IN_CHAMBER | {"trained-pars-plana": "cannot tell"},
        "lens-in-vitreous-lost",
        does=CUTS,
        never="enter-through-pars-plana",
    ),
    rupture(
        "No cutter in the building, vitreous in the chamber",
        {"vitreous": "in-chamber"} | NO_CUTTER,
        "nothing-left-no-lens",
        lens="LX",
        does="prepare-cutter suture-main-wound hold-vitreous-back call-vitreoretinal "
        "inject-cefuroxime book-two-week-retinal-look",
        never=f"cut-vitreous insert-cutter aspirate-cortex phaco-fragment {ANY_LENS}",
        plans="No cutter: hold back, close, transfer",
    ),
    rupture(
        "No cutter in the building, vitreous at the wound",
        {"vitreous": "at-wound"} | NO_CUTTER,
        "nothing-left-no-lens",
        does="free-wound-of-vitreous suture-main-wound hold-vitreous-back call-vitreoretinal",
        never=f"cut-vitreous {ANY_LENS}",
    ),
    rupture(
        "Nobody can tell whether a working cutter is here",
        {"vitreous": "in-chamber"} | NO_CUTTER | {"cutter": "cannot tell"},
        "nothing-left-no-lens",
        does="suture-main-wound hold-vitreous-back call-vitreoretinal",
        never="cut-vitreous",
    ),
    rupture(
        "Nobody can tell where vitreous is, stain shows none",
        {"vitreous": "cannot tell, none"},
        "lens-in-vitreous-kept",
        lens="L2",
        does="read-stain-aloud rinse-viscoelastic-away stain-with-triamcinolone aspirate-cortex",
        never="cut-vitreous",
    ),
    rupture(
        "Nobody can tell where vitreous is, stain shows it in the chamber",
        {"vitreous": "cannot tell, in-chamber, none"},
        "lens-in-vitreous-lost",
        does=f"stain-with-triamcinolone {CUTS}",
    ),
    rupture(
        "Nobody can tell where vitreous is, stained or not",
        {"vitreous": "cannot tell", "lens": "none"},
        "nothing-left-no-lens",
        lens="LX",
        does="stain-with-triamcinolone hold-vitreous-back call-vitreoretinal",
        never=f"cut-vitreous aspirate-cortex {ANY_LENS}",
    ),
    rupture(
        "Gel is left after three rounds",
        {"vitreous": "in-chamber", "lens": "none"},
        "nothing-left-no-lens",
        lens="LX",
        does="cut-vitreous cut-vitreous cut-vitreous fill-with-dispersive-viscoelastic "
        "withdraw-cutter call-vitreoretinal suture-main-wound",
        never=f"aspirate-cortex {ANY_LENS}",
        cuts=3,
    ),
    vitrectomy(
        "Vitreous held back at the tear",
        {"vitreous": "at-tear"},
        "held-back",
        does="hold-vitreous-back stain-with-triamcinolone",
        never="cut-vitreous separate-ports",
    ),
    vitrectomy(
        "The stain finds no vitreous at all",
        {"vitreous": "none"},
        "chamber-clear",
        does="stain-with-triamcinolone",
        never="cut-vitreous",
    ),
    vitrectomy(
        "The proving stain shows more gel, then none",
        {"vitreous": "in-chamber", "what-does-the-stain-prove": "in-chamber, none"}
        | {"is-gel-left": "none"},
        "chamber-clear",
        does=f"cut-vitreous {PROVES} cut-vitreous {PROVES}",
        cuts=2,
    ),
    vitrectomy(
        "No cutter for a team that opened this chart by itself",
        {"vitreous": "in-chamber", "cutter": "not-in-the-building"},
        "stopped",
        does="suture-main-wound hold-vitreous-back call-vitreoretinal",
        never="cut-vitreous",
    ),
    vitrectomy(
        "Eye hardens before a pars plana entry, chart opened by itself",
        {"vitreous": "in-chamber", "trained-pars-plana": "trained", "suprachoroidal": "suspected"},
        "bleed-suspected",
        does="call-vitreoretinal",
        never="enter-through-pars-plana cut-vitreous",
    ),
    vitrectomy(
        "A piece sinks as gel around it is cut",
        {"vitreous": "in-chamber", "fall": "fell"},
        "piece-fell",
        does="cut-vitreous fill-with-dispersive-viscoelastic withdraw-cutter withdraw-infusion "
        "call-vitreoretinal",
        never="levitate-piece",
    ),
)

SITUATIONS = VITREOUS
