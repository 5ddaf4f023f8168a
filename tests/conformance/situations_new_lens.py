"""Situations of a lens without capsule, and of a new lens that is not steady."""

from __future__ import annotations

from tests.conformance.situation import rupture
from tests.conformance.situations_begin import ANY_LENS
from tests.conformance.situations_lens import CHECKED, NONE

CHAMBER_LENS = {"trained-fixation": "trained", "lens-without-capsule": "chamber-lens"}

WITHOUT_CAPSULE = (
    rupture(
        "Chamber lens by a trained operator in a suitable eye",
        NONE | CHAMBER_LENS | {"vitreous": "in-chamber, none"},
        "lens-in-vitreous-lost",
        lens="L4 anterior chamber lens",
        does="measure-white-to-white recalculate-power read-power-aloud check-lens-aloud "
        "inject-miotic cut-iridectomy enlarge-main-wound place-lens-glide open-lens "
        "place-chamber-lens suture-main-wound",
        never="place-lens-in-sulcus",
    ),
    rupture(
        "The eye is not suited to a chamber lens",
        NONE | CHAMBER_LENS | {"eye-for-chamber-lens": "unsuitable"},
        "nothing-left-no-lens",
        lens="LX",
        never=f"cut-iridectomy inject-miotic {ANY_LENS}",
    ),
    rupture(
        "Nobody can tell whether the eye is suited to a chamber lens",
        NONE | CHAMBER_LENS | {"eye-for-chamber-lens": "cannot tell"},
        "nothing-left-no-lens",
        lens="LX",
        never=ANY_LENS,
    ),
    rupture(
        "Nobody can tell whether the operator is signed off without capsule",
        NONE | CHAMBER_LENS | {"trained-fixation": "cannot tell"},
        "nothing-left-no-lens",
        lens="LX",
        never=ANY_LENS,
    ),
    rupture(
        "Vitreous comes forward as the wound opens for a chamber lens",
        NONE | CHAMBER_LENS | {"where-is-vitreous-before-chamber-lens": "in-chamber"},
        "nothing-left-no-lens",
        lens="LX",
        does="cut-iridectomy enlarge-main-wound leave-aphakic suture-main-wound",
        never=ANY_LENS,
    ),
    rupture(
        "Lens fixed to iris or sclera by a signed-off operator",
        NONE | {"trained-fixation": "trained", "lens-without-capsule": "fixed-lens"},
        "lens-in-vitreous-kept",
        lens="L4 lens fixed",
        does=f"{CHECKED} fix-lens-without-capsule",
        never="cut-iridectomy place-chamber-lens",
    ),
    rupture(
        "The unit leaves an eye without capsule without a lens",
        NONE | {"trained-fixation": "trained", "lens-without-capsule": "leave-aphakic"},
        "nothing-left-no-lens",
        lens="LX",
        never=ANY_LENS,
    ),
)

UNSTEADY = (
    rupture(
        "The optic slips out and is captured at the second try",
        {"lens": "in-sulcus, optic-captured"},
        "lens-in-vitreous-kept",
        lens="L2",
        does="capture-optic capture-optic",
    ),
    rupture(
        "The optic is not captured at the second try",
        {"lens": "in-sulcus"},
        "lens-in-vitreous-kept",
        lens="Three-piece in the sulcus at the power of the bag",
        does="capture-optic capture-optic leave-lens-in-place recalculate-power read-power-aloud",
    ),
    rupture(
        "The new lens tilts and is steady once turned",
        {"lens-hold": "unsteady, steady"},
        "lens-in-vitreous-kept",
        does="fill-with-dispersive-viscoelastic turn-lens",
        never="remove-lens",
    ),
    rupture(
        "The new lens stays unsteady once turned",
        {"lens-hold": "unsteady"},
        "nothing-left-no-lens",
        lens="LX",
        does="turn-lens enlarge-main-wound remove-lens suture-main-wound write-lens-plan",
        never="inject-miotic",
    ),
    rupture(
        "The new lens sinks",
        {"lens-hold": "sinking"},
        "loose-lens",
        does="hold-lens-still call-vitreoretinal suture-main-wound write-vitreoretinal-plan",
        never="inject-miotic turn-lens remove-lens",
    ),
    rupture(
        "Nobody can tell how the new lens lies",
        {"lens-hold": "cannot tell"},
        "loose-lens",
        does="hold-lens-still call-vitreoretinal write-vitreoretinal-plan",
        never="inject-miotic remove-lens",
    ),
    rupture(
        "Vitreous comes past the new lens",
        {"where-is-vitreous-after-lens": "in-chamber"},
        "lens-in-vitreous-lost",
        does="capture-optic cut-vitreous stain-with-triamcinolone suture-main-wound",
    ),
)

SCAFFOLD_OUT_AGAIN = (
    rupture(
        "A scaffold lens comes out again, and vitreous comes forward for a third vitrectomy",
        {"nucleus-front": "hard-or-large, nothing", "scaffold-conditions": "all-met"}
        | {"cortex": "none", "front-opening": "not-capturable", "power-fit": "wrong"}
        | {"capsule-support": "round-tear, not-enough"}
        | {"where-is-vitreous-before-lens": "cannot tell, in-chamber"}
        | {"where-is-vitreous-after-removal": "cannot tell"},
        "nothing-left-no-lens",
        lens="LX close and refer",
        does="place-scaffold-lens phaco-fragment stain-with-triamcinolone remove-lens "
        "stain-with-triamcinolone test-rim record-vitreous-forward call-vitreoretinal "
        "suture-main-wound book-two-week-retinal-look",
        never="cut-vitreous place-lens-in-sulcus",
    ),
)

SITUATIONS = SCAFFOLD_OUT_AGAIN + WITHOUT_CAPSULE + UNSTEADY
