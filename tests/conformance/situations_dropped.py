"""Situations that begin with a piece falling or fallen."""

from __future__ import annotations

from tests.conformance.situation import dropped
from tests.conformance.situations_begin import ANY_LENS

VISIBLE, GONE = {"nucleus-behind": "visible"}, {"nucleus-behind": "gone"}
TRAINED = {"trained-levitation": "trained"}
AGREED = {"lens-agreed": "agreed"}
SOFT = {"nucleus-front": "soft-or-small, nothing"}
HARD = {"nucleus-front": "hard-or-large, nothing"}
PLANNED = "call-vitreoretinal write-vitreoretinal-plan"

PIECE = (
    dropped(
        "In view, levitation allowed and trained: once, and it comes up",
        {"nucleus-behind": "visible, nothing", "left-behind": "nothing"}
        | TRAINED
        | {"fallen-piece": "nothing"},
        "nothing-left-no-lens",
        does="announce-drop fill-with-dispersive-viscoelastic levitate-piece "
        "stain-with-triamcinolone call-vitreoretinal suture-main-wound "
        "book-two-week-retinal-look",
        never="leave-piece phaco-fragment",
    ),
    dropped(
        "In view, levitation trained, the one attempt fails",
        VISIBLE | TRAINED,
        "piece-left-no-lens",
        does=f"levitate-piece leave-piece {PLANNED}",
        never="phaco-fragment deliver-with-vectis",
    ),
    dropped(
        "In view, operator untrained",
        VISIBLE,
        "piece-left-no-lens",
        does=f"leave-piece cover-tear {PLANNED}",
        never=f"levitate-piece phaco-fragment {ANY_LENS}",
    ),
    dropped(
        "In view, nobody can tell whether levitation is open to this operator",
        VISIBLE | {"trained-levitation": "cannot tell"},
        "piece-left-no-lens",
        does=f"leave-piece {PLANNED}",
        never="levitate-piece",
    ),
    dropped(
        "Out of view, operator trained",
        GONE | TRAINED,
        "piece-left-no-lens",
        lens="LX none today",
        does=f"leave-piece cover-tear stain-with-triamcinolone {PLANNED} write-lens-plan",
        never=f"levitate-piece phaco-fragment inject-miotic {ANY_LENS}",
    ),
    dropped(
        "Nobody can tell what went down",
        {"nucleus-behind": "cannot tell", "fallen-piece": "cannot tell"} | TRAINED,
        "piece-left-no-lens",
        does=f"leave-piece {PLANNED}",
        never="levitate-piece",
    ),
    dropped(
        "What went down was a crumb of cortex",
        GONE | {"fallen-piece": "cortex-or-crumb"},
        "crumb-left-no-lens",
        does="announce-drop call-vitreoretinal leave-piece book-two-week-retinal-look "
        "call-vitreoretinal write-lens-plan",
        never="inject-miotic",
    ),
)

FRONT = (
    dropped(
        "Soft pieces still in front",
        GONE | SOFT,
        "piece-left-no-lens",
        does="leave-piece stain-with-triamcinolone lift-pieces remove-soft-pieces-with-cutter "
        "fill-with-dispersive-viscoelastic withdraw-cutter",
        never="phaco-fragment",
    ),
    dropped(
        "Soft pieces still in front, vitreous comes after the first round",
        GONE
        | {"nucleus-front": "soft-or-small, soft-or-small, nothing"}
        | {"where-is-vitreous-now": "in-chamber, none"},
        "piece-left-no-lens",
        does="cover-tear lift-pieces remove-soft-pieces-with-cutter withdraw-cutter cover-tear "
        "cut-vitreous stain-with-triamcinolone cover-tear lift-pieces",
        never="phaco-fragment",
    ),
    dropped(
        "Hard pieces still in front, vitreous in the chamber",
        GONE | HARD | {"vitreous": "in-chamber, none"},
        "piece-left-no-lens",
        does="leave-piece cut-vitreous lift-pieces enlarge-main-wound deliver-with-vectis "
        "suture-main-wound",
        never="phaco-fragment",
    ),
    dropped(
        "Another piece sinks as it is lifted; nothing is left in front",
        GONE | HARD | {"did-a-piece-fall-on-lifting": "fell"},
        "piece-left-no-lens",
        does="leave-piece lift-pieces leave-piece",
        never="deliver-with-vectis phaco-fragment levitate-piece",
    ),
    dropped(
        "Hard pieces are still in front after three rounds, though a lens is agreed to",
        GONE | AGREED | {"nucleus-front": "hard-or-large"},
        "piece-left-no-lens",
        lens="LX",
        does=f"deliver-with-vectis deliver-with-vectis deliver-with-vectis {PLANNED}",
        never=f"phaco-fragment {ANY_LENS}",
    ),
    dropped(
        "A crumb fell, and nucleus is still in front after three rounds",
        GONE | {"nucleus-front": "soft-or-small", "fallen-piece": "cortex-or-crumb"},
        "piece-left-no-lens",
        does=PLANNED,
        never=f"inject-miotic {ANY_LENS}",
    ),
    dropped(
        "The third of three pieces comes out in the third round",
        GONE
        | {"nucleus-front": "soft-or-small, soft-or-small, soft-or-small, nothing"}
        | {"fallen-piece": "cortex-or-crumb"},
        "crumb-left-no-lens",
        does="remove-soft-pieces-with-cutter remove-soft-pieces-with-cutter "
        "remove-soft-pieces-with-cutter",
    ),
    dropped(
        "Vitreous in the chamber and no cutter in the building",
        GONE | {"vitreous": "in-chamber", "cutter": "not-in-the-building", "lens": "none"},
        "piece-left-no-lens",
        lens="LX",
        does=f"leave-piece suture-main-wound {PLANNED}",
        never=f"cut-vitreous inject-miotic {ANY_LENS}",
    ),
    dropped(
        "Nobody can tell where vitreous is after each round, and stain shows none twice",
        GONE
        | {"nucleus-front": "soft-or-small", "where-is-vitreous-now": "cannot tell"}
        | {"lens": "none"},
        "piece-left-no-lens",
        lens="LX",
        does=f"remove-soft-pieces-with-cutter remove-soft-pieces-with-cutter "
        f"record-vitreous-forward {PLANNED}",
        never=f"cut-vitreous inject-miotic {ANY_LENS}",
    ),
    dropped(
        "Nobody can tell where vitreous is, stained or not",
        GONE | {"vitreous": "cannot tell", "lens": "none"},
        "piece-left-no-lens",
        lens="LX",
        does=f"stain-with-triamcinolone {PLANNED}",
        never=f"cut-vitreous inject-miotic {ANY_LENS}",
    ),
)

LENS = (
    dropped(
        "The vitreoretinal surgeon can operate now",
        GONE | {"vitreoretinal-surgeon": "able-now"},
        "same-session-vitrectomy",
        does="leave-piece hand-eye-over suture-main-wound agree-who-operates tell-patient "
        "write-vitreoretinal-plan enter-audit",
        never=f"inject-miotic {ANY_LENS}",
    ),
    dropped(
        "The vitreoretinal surgeon agrees to a lens, rim whole and capturable",
        GONE | AGREED,
        "piece-left-lens-in",
        lens="L2",
        does="call-vitreoretinal test-rim recalculate-power read-power-aloud check-lens-aloud "
        "open-lens place-lens-in-sulcus capture-optic write-vitreoretinal-plan",
        never="inject-miotic reduce-power-for-sulcus",
    ),
    dropped(
        "The vitreoretinal surgeon agrees to a lens, damaged rim",
        GONE | AGREED | {"capsule-support": "rim-enough", "front-opening": "torn"},
        "piece-left-lens-in",
        lens="L3",
        does="reduce-power-for-sulcus place-lens-in-sulcus",
        never="capture-optic inject-miotic",
    ),
    dropped(
        "A lens is agreed to, a small round tear is doubted twice",
        GONE | AGREED | {"capsule-support": "round-tear"},
        "piece-left-no-lens",
        lens="LX",
        does="inspect-capsule inspect-capsule leave-aphakic",
        never=ANY_LENS,
    ),
    dropped(
        "A lens is agreed to, too little support",
        GONE | AGREED | {"capsule-support": "not-enough"},
        "piece-left-no-lens",
        lens="LX",
        never=ANY_LENS,
    ),
    dropped(
        "A lens is agreed to, none of three pieces in the building",
        GONE | AGREED | {"three-piece-stock": "not-in-the-building"},
        "piece-left-no-lens",
        lens="LX",
        never=ANY_LENS,
    ),
    dropped(
        "A lens is agreed to, and vitreous comes as the rim is tested",
        GONE | AGREED | {"is-vitreous-clear-before-lens": "in-chamber"},
        "piece-left-no-lens",
        lens="LX",
        does="test-rim record-vitreous-forward leave-aphakic suture-main-wound",
        never=ANY_LENS,
    ),
    dropped(
        "Nobody has heard whether a lens is agreed to",
        GONE | {"lens-agreed": "cannot tell"},
        "piece-left-no-lens",
        lens="LX",
        never=ANY_LENS,
    ),
    dropped(
        "The agreed lens is unsteady",
        GONE | AGREED | {"lens-hold": "unsteady"},
        "piece-left-no-lens",
        lens="LX",
        does="place-lens-in-sulcus remove-lens suture-main-wound",
        never="turn-lens",
    ),
    dropped(
        "The agreed lens sinks",
        GONE | AGREED | {"lens-hold": "sinking"},
        "loose-lens",
        does="place-lens-in-sulcus hold-lens-still call-vitreoretinal write-vitreoretinal-plan",
        never="remove-lens turn-lens inject-miotic",
    ),
    dropped(
        "A lens is agreed to, and the cornea has clouded over in the vitrectomy",
        GONE
        | AGREED
        | {"vitreous": "in-chamber, none", "is-the-view-clear-before-lens": "too-cloudy"},
        "piece-left-no-lens",
        lens="LX",
        does="cut-vitreous leave-aphakic",
        never=ANY_LENS,
    ),
    dropped(
        "The optic of the agreed lens is not captured",
        GONE | AGREED | {"lens": "none, in-sulcus"},
        "piece-left-lens-in",
        lens="Three-piece in the sulcus at the power of the bag",
        does="capture-optic leave-lens-in-place recalculate-power read-power-aloud",
    ),
    dropped(
        "Vitreous comes past the agreed lens",
        GONE | AGREED | {"where-is-vitreous-after-lens": "at-wound"},
        "piece-left-lens-in",
        does="place-lens-in-sulcus free-wound-of-vitreous suture-main-wound cut-vitreous "
        "stain-with-triamcinolone",
        never="inject-miotic",
    ),
    dropped(
        "A lens was in when the piece was found",
        GONE | {"lens": "in-bag"},
        "piece-left-lens-in",
        does=f"leave-piece hold-lens-still {PLANNED}",
        never=f"remove-lens inject-miotic {ANY_LENS}",
    ),
)

SITUATIONS = PIECE + FRONT + LENS
