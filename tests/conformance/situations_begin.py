"""Situations before surgery, in the first minute, and where something overrides the rest."""

from __future__ import annotations

from tests.conformance.situation import closing, dropped, rupture

BEFORE = {"tip": "surgery-not-begun"}
ANY_LENS = (
    "place-lens-in-bag place-lens-in-sulcus place-scaffold-lens place-chamber-lens "
    "fix-lens-without-capsule open-lens"
)
BACKUP = "consent-for-two-stages work-out-backup-power agree-anaesthetic"
BLED = "press-wound-closed close-every-wound call-vitreoretinal treat-pain-and-blood-pressure"
AFTER_BLEED = (
    f"{BLED} tell-patient write-vitreoretinal-plan give-written-warnings book-next-day-review"
)
HANDS_OFF = (
    f"{ANY_LENS} cut-vitreous phaco-fragment deliver-with-vectis aspirate-cortex "
    "remove-viscoelastic inject-miotic inject-cefuroxime stain-with-triamcinolone"
)

PLANNING = (
    rupture(
        "Posterior polar cataract tomorrow",
        BEFORE,
        "prepared",
        does=f"call-for-help call-vitreoretinal fetch-box plan-without-hydrodissection {BACKUP}",
        never=f"announce-rupture fill-with-dispersive-viscoelastic {ANY_LENS}",
    ),
    rupture(
        "Penetrating injury, lens matter behind suspected",
        BEFORE | {"defect-risk": "trauma"},
        "prepared",
        does=f"scan-behind-lens plan-without-hydrodissection prepare-cutter {BACKUP}",
    ),
    rupture(
        "Many injections into the vitreous",
        BEFORE | {"defect-risk": "previous-injections"},
        "prepared",
        does=f"plan-without-hydrodissection {BACKUP}",
    ),
    rupture(
        "White lens that hides the back capsule",
        BEFORE | {"defect-risk": "white-lens"},
        "prepared",
        does=f"plan-without-hydrodissection {BACKUP}",
    ),
    rupture(
        "A defect is feared and nobody knows why",
        BEFORE | {"defect-risk": "cannot tell"},
        "prepared",
        does=f"call-vitreoretinal plan-without-hydrodissection {BACKUP}",
    ),
)

FIRST_MINUTE = (
    rupture(
        "Capsule opens with the tip in the eye",
        {},
        "lens-in-vitreous-kept",
        does="hold-tip-still stop-aspiration announce-rupture call-for-help fetch-box "
        "fill-with-dispersive-viscoelastic cover-tear withdraw-tip "
        "fill-with-dispersive-viscoelastic lower-infusion relieve-outside-pressure "
        "agree-who-operates",
        never="call-vitreoretinal cut-vitreous phaco-fragment",
    ),
    rupture(
        "Capsule is seen open after the tip has left",
        {"tip": "out-of-the-eye", "cortex": "none"},
        "lens-in-vitreous-kept",
        does="announce-rupture fill-with-dispersive-viscoelastic lower-infusion",
        never="hold-tip-still withdraw-tip",
    ),
    rupture(
        "Nobody can tell whether a tip is in the eye",
        {"tip": "cannot tell"},
        "lens-in-vitreous-kept",
        does="hold-tip-still stop-aspiration announce-rupture fill-with-dispersive-viscoelastic "
        "withdraw-tip lower-infusion",
    ),
    dropped(
        "A piece is seen to sink with the tip in the eye",
        {"nucleus-behind": "visible", "left-behind": "nuclear"},
        "piece-left-no-lens",
        does="hold-tip-still stop-aspiration announce-drop call-vitreoretinal lower-infusion "
        "fill-with-dispersive-viscoelastic cover-tear withdraw-tip agree-who-operates leave-piece",
        never=f"levitate-piece phaco-fragment {ANY_LENS}",
    ),
)

BLEED = (
    rupture(
        "Eye hardens in the first minute",
        {"suprachoroidal": "suspected"},
        "bleed-closed",
        lens="LX",
        does=AFTER_BLEED,
        never=HANDS_OFF,
    ),
    rupture(
        "Nobody can tell whether the eye is hard, twice",
        {"suprachoroidal": "cannot tell"},
        "bleed-closed",
        does=AFTER_BLEED,
        never=HANDS_OFF,
    ),
    rupture(
        "Softness in doubt at first, no bleed on the second look; the nucleus stays",
        {"suprachoroidal": "cannot tell, no-signs", "left-behind": "nuclear", "lens": "none"},
        "piece-left-no-lens",
        does="suture-main-wound inject-cefuroxime write-vitreoretinal-plan",
        never=f"{ANY_LENS} inject-miotic",
    ),
    rupture(
        "Eye hardens just before the wound is enlarged for a hard nucleus",
        {"nucleus-front": "hard-or-large", "is-the-eye-soft-before-delivery": "suspected"},
        "bleed-closed",
        does=AFTER_BLEED,
        never=f"enlarge-main-wound {HANDS_OFF}",
    ),
    rupture(
        "Softness in doubt just before delivery",
        {"nucleus-front": "whole", "suprachoroidal": "no-signs, cannot tell"},
        "bleed-closed",
        never=f"enlarge-main-wound {HANDS_OFF}",
    ),
    rupture(
        "Eye hardens just before the lens",
        {"is-the-eye-soft-before-lens": "suspected"},
        "bleed-closed",
        does=AFTER_BLEED,
        never=f"{ANY_LENS} inject-miotic",
    ),
    rupture(
        "Eye hardens before the cutter enters through the pars plana",
        {
            "vitreous": "in-chamber",
            "trained-pars-plana": "trained",
            "is-the-eye-soft-before-entry": "suspected",
        },
        "bleed-closed",
        does=BLED,
        never="enter-through-pars-plana cut-vitreous",
    ),
    rupture(
        "Eye hardens as the eye is being closed",
        {"is-the-eye-soft": "no-signs, suspected"},
        "bleed-closed",
        does=f"place-lens-in-sulcus {BLED}",
        never="inject-miotic remove-viscoelastic inject-cefuroxime",
    ),
    dropped(
        "Eye hardens after a nucleus has dropped",
        {"suprachoroidal": "suspected"},
        "bleed-closed",
        does=f"announce-drop {AFTER_BLEED}",
        never=f"levitate-piece {HANDS_OFF}",
    ),
    dropped(
        "Eye hardens before a levitation that was meant",
        {
            "nucleus-behind": "visible",
            "trained-levitation": "trained",
            "comfort": "uncomfortable, comfortable",
            "is-the-eye-soft-before-levitation": "suspected",
        },
        "bleed-closed",
        never="levitate-piece",
    ),
    dropped(
        "Softness in doubt before a levitation that was meant",
        {
            "nucleus-behind": "visible",
            "trained-levitation": "trained",
            "comfort": "uncomfortable, comfortable",
            "suprachoroidal": "no-signs, cannot tell",
        },
        "bleed-closed",
        never="levitate-piece cut-vitreous",
    ),
    dropped(
        "Eye hardens before a hard piece in front is delivered",
        {
            "nucleus-behind": "gone",
            "nucleus-front": "hard-or-large",
            "is-the-eye-soft-before-delivery": "suspected",
        },
        "bleed-closed",
        does=f"leave-piece {BLED}",
        never="enlarge-main-wound deliver-with-vectis",
    ),
    dropped(
        "Eye hardens before a lens that the vitreoretinal surgeon had agreed to",
        {
            "nucleus-behind": "gone",
            "lens-agreed": "agreed",
            "is-the-eye-soft-before-lens": "suspected",
        },
        "bleed-closed",
        never=ANY_LENS,
    ),
    closing(
        "Wounds gape in a bleed and no suture holds",
        {"suprachoroidal": "suspected", "wounds": "leaking"},
        "bleed-held-by-hand",
        does=f"{BLED} close-every-wound close-every-wound press-wound-closed call-vitreoretinal "
        "tell-patient",
        never="cut-vitreous inject-cefuroxime",
    ),
    closing(
        "A strand lies in a wound that closes in a bleed",
        {"suprachoroidal": "suspected", "wounds": "holding-a-strand"},
        "bleed-closed",
        does=BLED,
        never="cut-vitreous free-wound-of-vitreous stain-with-triamcinolone",
    ),
    closing(
        "Nobody can tell whether the wounds hold in a bleed, then they do",
        {"suprachoroidal": "suspected", "wounds": "cannot tell, dry-and-clear"},
        "bleed-closed",
        does="close-every-wound close-every-wound tell-patient",
    ),
)

SITUATIONS = PLANNING + FIRST_MINUTE + BLEED
