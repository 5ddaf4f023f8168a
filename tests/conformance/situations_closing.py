"""Situations of closing the eye and of what is owed afterwards."""

from __future__ import annotations

from tests.conformance.situation import closing, dropped, rupture

FORWARD = {"vitreous-lost": "came-forward"}
ALWAYS = (
    "write-pressure-plan tell-patient give-written-warnings prescribe-drops "
    "book-next-day-review record-data-set enter-audit"
)
LOOKS = "book-two-week-retinal-look book-six-week-retinal-look"

CLOSING = (
    closing(
        "Nothing left, lens in, vitreous kept back, wound small and sealed",
        {"lens": "in-bag"},
        "lens-in-vitreous-kept",
        does=f"inject-miotic remove-viscoelastic stain-with-triamcinolone hydrate-side-ports "
        f"inject-cefuroxime {ALWAYS}",
        never=f"suture-main-wound {LOOKS}",
    ),
    closing(
        "Lens in, vitreous was lost",
        {"lens": "in-sulcus"} | FORWARD,
        "lens-in-vitreous-lost",
        does=f"suture-main-wound inject-cefuroxime {ALWAYS} {LOOKS}",
    ),
    closing(
        "No lens, nothing left",
        {"lens": "none"},
        "nothing-left-no-lens",
        does=f"inject-cefuroxime {ALWAYS} {LOOKS} write-lens-plan",
        never="inject-miotic",
    ),
    closing(
        "Cortex was left behind",
        {"lens": "in-bag", "left-behind": "cortex-or-crumb"},
        "crumb-left-lens-in",
        does=f"inject-cefuroxime {ALWAYS} call-vitreoretinal",
        never="inject-miotic",
    ),
    closing(
        "A piece of nucleus was left behind under a lens",
        {"lens": "optic-captured", "left-behind": "nuclear"},
        "piece-left-lens-in",
        does=f"suture-main-wound {ALWAYS} {LOOKS} call-vitreoretinal write-vitreoretinal-plan",
        never="inject-miotic",
    ),
    closing(
        "The pieces do not add up",
        {"lens": "none", "left-behind": "cannot tell"},
        "piece-left-no-lens",
        does=f"suture-main-wound {ALWAYS} {LOOKS} call-vitreoretinal write-vitreoretinal-plan",
        never="inject-miotic",
    ),
    closing(
        "Nobody can tell where the lens is",
        {"lens": "cannot tell"},
        "loose-lens",
        does=f"suture-main-wound {ALWAYS} {LOOKS} call-vitreoretinal write-vitreoretinal-plan",
        never="inject-miotic",
    ),
    closing(
        "Nobody can tell whether vitreous ever came forward",
        {"lens": "in-bag", "vitreous-lost": "cannot tell"},
        "lens-in-vitreous-lost",
        does=f"suture-main-wound {LOOKS}",
    ),
)

KEPT_IN_MIND = (
    closing(
        "Nobody can tell how the lens lies",
        {"lens": "in-bag", "lens-hold": "cannot tell"},
        "loose-lens",
        does=f"suture-main-wound {ALWAYS} {LOOKS} call-vitreoretinal write-vitreoretinal-plan",
        never="inject-miotic remove-lens turn-lens",
    ),
    closing(
        "The lens gives way while vitreous is cut at the end",
        {"lens": "in-bag", "vitreous": "in-chamber, none", "lens-hold": "steady, unsteady"},
        "loose-lens",
        does="cut-vitreous hold-lens-still call-vitreoretinal suture-main-wound "
        "write-vitreoretinal-plan",
        never="remove-lens turn-lens",
    ),
    closing(
        "Nucleus was left in front, and vitreous comes at the end",
        {"lens": "none", "left-behind": "nuclear", "vitreous": "in-chamber, none"},
        "piece-left-no-lens",
        does="remove-viscoelastic cover-tear insert-cutter cut-vitreous suture-main-wound",
    ),
    closing(
        "A wound is found holding a strand that the last stain had not shown",
        {"lens": "in-bag", "wounds": "holding-a-strand, dry-and-clear"},
        "lens-in-vitreous-lost",
        does=f"record-vitreous-forward stain-with-triamcinolone suture-main-wound {LOOKS}",
    ),
    rupture(
        "Vitreous was seen forward, a bleed is in doubt, and the eye is soft after all",
        {"vitreous": "in-chamber, none", "trained-pars-plana": "trained", "lens": "none"}
        | {"is-the-eye-soft-before-entry": "cannot tell"},
        "nothing-left-no-lens",
        does=f"record-vitreous-forward suture-main-wound inject-cefuroxime {LOOKS}",
        never="cut-vitreous close-every-wound",
    ),
    rupture(
        "A lens was found unsteady, a bleed is in doubt, and the eye is soft after all",
        {"lens-hold": "unsteady", "is-the-eye-soft-before-taking-out": "cannot tell"},
        "loose-lens",
        does="place-lens-in-sulcus turn-lens call-vitreoretinal write-vitreoretinal-plan",
        never="remove-lens inject-miotic close-every-wound",
    ),
    dropped(
        "A piece is in view, a bleed is in doubt, and the eye is soft after all",
        {"nucleus-behind": "visible", "trained-levitation": "trained", "lens": "none"}
        | {"comfort": "uncomfortable, comfortable"}
        | {"is-the-eye-soft-before-levitation": "cannot tell", "left-behind": "nothing"},
        "piece-left-no-lens",
        does="announce-drop call-vitreoretinal suture-main-wound write-vitreoretinal-plan",
        never="levitate-piece close-every-wound",
    ),
)

WOUNDS = (
    closing(
        "The main wound leaks",
        {"lens": "in-bag", "main-wound": "leaking"},
        "lens-in-vitreous-kept",
        does="suture-main-wound hydrate-side-ports inject-cefuroxime",
    ),
    closing(
        "Nobody can tell whether the main wound is tight",
        {"lens": "in-bag", "main-wound": "cannot tell"},
        "lens-in-vitreous-kept",
        does="suture-main-wound hydrate-side-ports",
    ),
    closing(
        "A side port leaks, and one more suture holds it",
        {"lens": "in-bag", "wounds": "leaking, dry-and-clear"},
        "lens-in-vitreous-kept",
        does="hydrate-side-ports suture-main-wound inject-cefuroxime",
    ),
    closing(
        "A wound leaks on after two more sutures",
        {"lens": "in-bag", "wounds": "leaking"},
        "lens-in-vitreous-kept",
        does="suture-main-wound suture-main-wound call-for-help suture-main-wound "
        "inject-cefuroxime",
    ),
    closing(
        "Nobody can tell whether the wounds are tight",
        {"lens": "in-bag", "wounds": "cannot tell, dry-and-clear"},
        "lens-in-vitreous-kept",
        does="suture-main-wound inject-cefuroxime",
    ),
    closing(
        "A strand shows in a wound at the last stain",
        {"lens": "in-bag", "vitreous": "at-wound, at-wound, none"},
        "lens-in-vitreous-lost",
        does="stain-with-triamcinolone free-wound-of-vitreous suture-main-wound cut-vitreous "
        "stain-with-triamcinolone inject-cefuroxime book-two-week-retinal-look",
    ),
    closing(
        "A strand stays in a wound after a vitrectomy",
        {"lens": "in-bag", "vitreous": "at-wound, at-wound, none", "wounds": "holding-a-strand"},
        "lens-in-vitreous-lost",
        does="cut-vitreous call-vitreoretinal call-for-help suture-main-wound inject-cefuroxime",
    ),
    closing(
        "A piece is found and falls in the vitrectomy at the end",
        {"lens": "in-bag", "vitreous": "in-chamber", "fall": "fell"},
        "piece-left-lens-in",
        does="cut-vitreous leave-piece call-vitreoretinal suture-main-wound "
        "write-vitreoretinal-plan",
        never="levitate-piece",
    ),
    closing(
        "Vitreous at the end and no cutter in the building",
        {"lens": "in-bag", "vitreous": "in-chamber", "cutter": "not-in-the-building"},
        "lens-in-vitreous-lost",
        does="suture-main-wound call-vitreoretinal hold-vitreous-back inject-cefuroxime "
        "book-two-week-retinal-look",
        never="cut-vitreous",
    ),
    rupture(
        "A vitrectomy was stopped: it is not begun again at closing",
        {"vitreous": "in-chamber", "lens": "none"},
        "nothing-left-no-lens",
        does="cut-vitreous call-vitreoretinal hold-vitreous-back suture-main-wound "
        "inject-cefuroxime",
        cuts=3,
    ),
)

DRUGS = (
    closing(
        "Cephalosporin allergy",
        {"lens": "in-bag", "antibiotic-allergy": "present"},
        "lens-in-vitreous-kept",
        does="inject-local-antibiotic",
        never="inject-cefuroxime",
    ),
    closing(
        "Nobody can tell about allergies",
        {"lens": "in-bag", "antibiotic-allergy": "cannot tell"},
        "lens-in-vitreous-kept",
        does="inject-local-antibiotic",
        never="inject-cefuroxime",
    ),
    closing(
        "Sulphonamide allergy",
        {"lens": "in-bag", "acetazolamide-risks": "found"},
        "lens-in-vitreous-kept",
        does="inject-cefuroxime give-pressure-drops",
        never="give-acetazolamide",
    ),
    closing(
        "Nobody can tell about kidneys and salts",
        {"lens": "in-bag", "acetazolamide-risks": "cannot tell"},
        "lens-in-vitreous-kept",
        does="give-pressure-drops",
        never="give-acetazolamide",
    ),
    closing(
        "Both allergies",
        {"lens": "in-bag", "antibiotic-allergy": "present", "acetazolamide-risks": "found"},
        "lens-in-vitreous-kept",
        does="inject-local-antibiotic write-pressure-plan give-pressure-drops",
        never="inject-cefuroxime give-acetazolamide",
    ),
    closing(
        "No allergy and no risk",
        {"lens": "in-bag"},
        "lens-in-vitreous-kept",
        does="inject-cefuroxime write-pressure-plan give-acetazolamide",
        never="inject-local-antibiotic give-pressure-drops",
    ),
)

SITUATIONS = CLOSING + KEPT_IN_MIND + WOUNDS + DRUGS
