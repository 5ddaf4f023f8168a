"""Groups of acts and of outcomes that several rules speak of."""

from __future__ import annotations

FILL = ("fill-with-dispersive-viscoelastic",)
TAMPONADE = (*FILL, "cover-tear", "lift-pieces", "hold-vitreous-back")
WITHDRAW = ("withdraw-tip", "withdraw-cutter")

REMOVE_NUCLEUS = (
    "phaco-fragment",
    "remove-soft-pieces-with-cutter",
    "viscoexpress-piece",
    "deliver-with-vectis",
)
NUCLEUS = (*REMOVE_NUCLEUS, "lift-pieces", "enlarge-capsulorhexis", "place-scaffold-lens")
CUT = ("cut-vitreous",)
VITREOUS = (
    *CUT,
    "hold-vitreous-back",
    "rinse-viscoelastic-away",
    "stain-with-triamcinolone",
    "free-wound-of-vitreous",
    "separate-ports",
    "enter-through-pars-plana",
    "place-infusion-low",
    "insert-cutter",
)
CORTEX_AND_CAPSULE = ("aspirate-cortex", "make-tear-round", "test-rim")
PLACE_OUTSIDE_BAG = (
    "place-lens-in-sulcus",
    "place-scaffold-lens",
    "place-chamber-lens",
    "fix-lens-without-capsule",
)
PLACE_LENS = ("place-lens-in-bag", *PLACE_OUTSIDE_BAG)
LENS = (*PLACE_LENS, "capture-optic", "turn-lens", "remove-lens", "reduce-power-for-sulcus")
MANOEUVRES = (
    *NUCLEUS,
    "levitate-piece",
    *VITREOUS,
    *CORTEX_AND_CAPSULE,
    *LENS,
    "enlarge-main-wound",
    "cut-iridectomy",
    "raise-infusion",
)
DRAINING = (*REMOVE_NUCLEUS, *CUT, "aspirate-cortex", "remove-viscoelastic")

BACK = frozenset({"chamber-clear", "held-back", "piece-fell", "stopped", "bleed-suspected"})
"""Outcomes of the vitrectomy pathway, which comes back; closing follows elsewhere."""
PREPARED = frozenset({"prepared"})
BLEED = frozenset({"bleed-closed", "bleed-held-by-hand"})
HANDED_OVER = frozenset({"same-session-vitrectomy"})
NOT_CLOSED_HERE = BACK | PREPARED
