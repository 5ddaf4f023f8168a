"""Situations from hydrodissection to the last piece of nucleus, the scaffold, and cortex."""

from __future__ import annotations

from tests.conformance.situation import rupture
from tests.conformance.situations_begin import ANY_LENS

SOFT, HARD, WHOLE = (
    {"nucleus-front": f"{size}, nothing"} for size in ("soft-or-small", "hard-or-large", "whole")
)
BY_HAND = "lift-pieces enlarge-main-wound viscoexpress-piece deliver-with-vectis"
CUTS = (
    "separate-ports place-infusion-low start-cutting-before-aspiration insert-cutter cut-vitreous"
)
VR_PLAN = "call-vitreoretinal leave-piece write-vitreoretinal-plan"
GONE = {"lens": "none", "left-behind": "nuclear"}

NUCLEUS = (
    rupture(
        "Rupture at hydrodissection, nucleus whole, vitreous back",
        {"stage": "hydrodissection"} | WHOLE,
        "lens-in-vitreous-kept",
        does=f"enlarge-capsulorhexis {BY_HAND} suture-main-wound",
        never="phaco-fragment cut-vitreous",
        plans="Enlarge the front opening and convert",
    ),
    rupture(
        "Rupture at hydrodissection, nucleus gone at once",
        {"stage": "hydrodissection", "nucleus-behind": "gone"} | GONE,
        "piece-left-no-lens",
        does=f"announce-drop {VR_PLAN}",
        never=f"levitate-piece phaco-fragment {ANY_LENS}",
    ),
    rupture(
        "Soft pieces, vitreous back",
        SOFT,
        "lens-in-vitreous-kept",
        lens="L2",
        does="cover-tear lift-pieces phaco-fragment fill-with-dispersive-viscoelastic withdraw-tip",
        never="cut-vitreous enlarge-main-wound",
    ),
    rupture(
        "Soft pieces, vitreous bulging at the tear",
        SOFT | {"vitreous": "at-tear, at-tear, none"},
        "lens-in-vitreous-kept",
        does="cover-tear hold-vitreous-back stain-with-triamcinolone lift-pieces phaco-fragment",
        never="cut-vitreous",
        plans="Hold back at the tear and stain",
    ),
    rupture(
        "Soft pieces, vitreous in the chamber",
        SOFT | {"vitreous": "in-chamber, none"},
        "lens-in-vitreous-lost",
        does=f"cover-tear {CUTS} lift-pieces remove-soft-pieces-with-cutter withdraw-cutter",
        never="phaco-fragment",
    ),
    rupture(
        "Soft pieces, vitreous at the wound",
        SOFT | {"vitreous": "at-wound, none"},
        "lens-in-vitreous-lost",
        does=f"free-wound-of-vitreous suture-main-wound {CUTS} remove-soft-pieces-with-cutter",
        never="phaco-fragment",
    ),
    rupture(
        "Soft pieces, nobody can tell whether vitreous ever came forward",
        SOFT | {"vitreous-lost": "cannot tell, came-forward"},
        "lens-in-vitreous-lost",
        does="remove-soft-pieces-with-cutter",
        never="phaco-fragment",
    ),
    rupture(
        "Four soft pieces come out one by one",
        {"nucleus-front": "soft-or-small, soft-or-small, soft-or-small, soft-or-small, nothing"},
        "lens-in-vitreous-kept",
        lens="L2",
        does="phaco-fragment phaco-fragment phaco-fragment phaco-fragment place-lens-in-sulcus",
    ),
    rupture(
        "Pieces are still there after four rounds",
        {"nucleus-front": "soft-or-small"} | GONE,
        "piece-left-no-lens",
        lens="LX",
        does="phaco-fragment call-vitreoretinal suture-main-wound write-vitreoretinal-plan",
        never=ANY_LENS,
    ),
    rupture(
        "Hard pieces, vitreous back",
        HARD,
        "lens-in-vitreous-kept",
        does=f"cover-tear {BY_HAND} fill-with-dispersive-viscoelastic suture-main-wound",
        never="phaco-fragment cut-vitreous",
    ),
    rupture(
        "Hard pieces, vitreous in the chamber",
        HARD | {"vitreous": "in-chamber, none"},
        "lens-in-vitreous-lost",
        does=f"cover-tear {CUTS} {BY_HAND} suture-main-wound",
        never="phaco-fragment remove-soft-pieces-with-cutter",
    ),
    rupture(
        "Hard pieces, vitreous at the wound",
        HARD | {"vitreous": "at-wound, none"},
        "lens-in-vitreous-lost",
        does=f"free-wound-of-vitreous suture-main-wound {CUTS} {BY_HAND} suture-main-wound",
        never="phaco-fragment",
    ),
    rupture(
        "Nobody can tell how hard the pieces are",
        {"nucleus-front": "cannot tell, nothing"},
        "lens-in-vitreous-kept",
        does=BY_HAND,
        never="phaco-fragment",
    ),
    rupture(
        "Whole nucleus, vitreous at the tear",
        WHOLE | {"vitreous": "at-tear, at-tear, none"},
        "lens-in-vitreous-kept",
        does=f"hold-vitreous-back stain-with-triamcinolone enlarge-capsulorhexis {BY_HAND}",
        never="phaco-fragment cut-vitreous",
    ),
    rupture(
        "Whole nucleus, vitreous in the chamber",
        WHOLE | {"vitreous": "in-chamber, none"},
        "lens-in-vitreous-lost",
        does=f"{CUTS} enlarge-capsulorhexis {BY_HAND} suture-main-wound",
        never="phaco-fragment",
    ),
    rupture(
        "Vitreous comes to the wound as it is opened for a hard piece",
        HARD | {"is-vitreous-near-the-vectis": "at-wound, none"},
        "lens-in-vitreous-lost",
        does=f"enlarge-main-wound free-wound-of-vitreous suture-main-wound {CUTS} lift-pieces "
        "deliver-with-vectis suture-main-wound",
        never="phaco-fragment",
    ),
)

FALLING = (
    rupture(
        "A soft piece sinks as it is lifted",
        SOFT | {"did-a-soft-piece-fall": "gone"} | GONE,
        "piece-left-no-lens",
        does=f"lift-pieces announce-drop {VR_PLAN}",
        never=f"phaco-fragment levitate-piece {ANY_LENS}",
    ),
    rupture(
        "A hard piece tilts back as it is lifted, still in view, operator untrained",
        HARD | {"did-a-firm-piece-fall": "visible"} | GONE,
        "piece-left-no-lens",
        does=f"lift-pieces announce-drop {VR_PLAN}",
        never=f"deliver-with-vectis levitate-piece {ANY_LENS}",
    ),
    rupture(
        "A piece falls while vitreous is cut",
        HARD
        | {"vitreous": "in-chamber, none", "fall": "fell", "nucleus-behind": "nothing, gone"}
        | GONE,
        "piece-left-no-lens",
        does=f"cut-vitreous withdraw-cutter announce-drop {VR_PLAN}",
        never=f"levitate-piece {ANY_LENS}",
    ),
    rupture(
        "Nobody can tell whether a piece fell while vitreous was cut",
        HARD
        | {"vitreous": "in-chamber, none", "fall": "cannot tell"}
        | {"nucleus-behind": "nothing, cannot tell"}
        | GONE,
        "piece-left-no-lens",
        does=f"cut-vitreous withdraw-cutter announce-drop {VR_PLAN}",
        never=f"levitate-piece {ANY_LENS}",
    ),
    rupture(
        "Nobody can tell what lies behind, on two looks",
        {"nucleus-behind": "cannot tell"} | GONE,
        "piece-left-no-lens",
        does=f"fill-with-dispersive-viscoelastic announce-drop {VR_PLAN}",
        never=f"levitate-piece phaco-fragment {ANY_LENS}",
    ),
    rupture(
        "What lies behind is in doubt at first; the second look finds nothing",
        {"nucleus-behind": "cannot tell, nothing"},
        "lens-in-vitreous-kept",
        never="announce-drop leave-piece",
    ),
)

SCAFFOLD = (
    rupture(
        "Moderate pieces over a scaffold, every condition met",
        HARD | {"scaffold-conditions": "all-met", "lens": "optic-captured"},
        "lens-in-vitreous-kept",
        lens="L2",
        does="lift-pieces choose-three-piece-lens recalculate-power read-power-aloud "
        "check-lens-aloud open-lens place-scaffold-lens phaco-fragment capture-optic",
        never="deliver-with-vectis enlarge-main-wound cut-vitreous",
    ),
    rupture(
        "Vitreous comes round the scaffold",
        HARD | {"scaffold-conditions": "all-met", "is-vitreous-over-scaffold": "in-chamber"},
        "lens-in-vitreous-lost",
        does="place-scaffold-lens cut-vitreous phaco-fragment",
    ),
    rupture(
        "A piece falls past the scaffold",
        HARD | {"scaffold-conditions": "all-met", "did-a-piece-fall-past-the-scaffold": "gone"},
        "loose-lens",
        does="place-scaffold-lens announce-drop call-vitreoretinal leave-piece hold-lens-still "
        "write-vitreoretinal-plan",
        never="phaco-fragment inject-miotic levitate-piece",
    ),
    rupture(
        "Nobody can tell whether every condition for a scaffold is met",
        HARD | {"scaffold-conditions": "cannot tell"},
        "lens-in-vitreous-kept",
        does=BY_HAND,
        never="place-scaffold-lens phaco-fragment",
    ),
    rupture(
        "A whole nucleus is no case for a scaffold",
        WHOLE | {"scaffold-conditions": "all-met"},
        "lens-in-vitreous-kept",
        does=f"enlarge-capsulorhexis {BY_HAND}",
        never="place-scaffold-lens phaco-fragment",
    ),
)

CORTEX = (
    rupture("No cortex", {"cortex": "none"}, "lens-in-vitreous-kept", never="aspirate-cortex"),
    rupture(
        "Cortex left, vitreous never came through",
        {},
        "lens-in-vitreous-kept",
        does="fill-with-dispersive-viscoelastic aspirate-cortex fill-with-dispersive-viscoelastic "
        "withdraw-tip",
        never="raise-infusion",
    ),
    rupture(
        "Cortex left after a vitrectomy",
        {"vitreous": "in-chamber, none"},
        "lens-in-vitreous-lost",
        does="cut-vitreous stain-with-triamcinolone cover-tear raise-infusion aspirate-cortex",
    ),
    rupture(
        "The tear grows with the first strip of cortex",
        {"cortex": "left", "tear": "growing", "left-behind": "cortex-or-crumb"},
        "crumb-left-lens-in",
        does="aspirate-cortex leave-cortex cover-tear inspect-capsule place-lens-in-sulcus",
        never="inject-miotic",
    ),
    rupture(
        "Nobody can tell whether the tear grows",
        {"cortex": "left", "tear": "cannot tell", "left-behind": "cortex-or-crumb"},
        "crumb-left-lens-in",
        does="aspirate-cortex leave-cortex",
    ),
    rupture(
        "Nobody can tell whether cortex is left",
        {"cortex": "cannot tell"},
        "lens-in-vitreous-kept",
        does="leave-cortex cover-tear",
        never="aspirate-cortex",
    ),
    rupture(
        "Cortex stays after two rounds",
        {"cortex": "left", "left-behind": "cortex-or-crumb"},
        "crumb-left-lens-in",
        does="aspirate-cortex aspirate-cortex leave-cortex",
    ),
    rupture(
        "Rupture at the cortex, vitreous follows the cannula",
        {"stage": "cortex", "is-vitreous-after-cortex": "in-chamber"},
        "lens-in-vitreous-lost",
        does="aspirate-cortex withdraw-tip cut-vitreous stain-with-triamcinolone",
    ),
)

SITUATIONS = NUCLEUS + FALLING + SCAFFOLD + CORTEX
