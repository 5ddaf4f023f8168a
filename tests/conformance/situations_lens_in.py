"""Situations of a lens that was in the eye, or on its way, when the capsule opened."""

from __future__ import annotations

from tests.conformance.situation import rupture
from tests.conformance.situations_begin import ANY_LENS
from tests.conformance.situations_lens import CAPTURED, CHECKED
from tests.conformance.situations_vitreous import CUTS, PROVES

LATE = {"stage": "viscoelastic-removal"}
SINGLE = {"lens-type": "single-piece-acrylic"}

LENS_ALREADY_IN = (
    rupture(
        "Single-piece lens steady in the bag over a small round tear",
        LATE | SINGLE | {"lens": "in-bag", "capsule-support": "round-tear"},
        "lens-in-vitreous-kept",
        lens="Lens left",
        does="hold-lens-still inspect-capsule leave-lens-in-place read-power-aloud",
        never="remove-lens place-lens-in-sulcus open-lens",
    ),
    rupture(
        "Single-piece lens in the bag over a large tear, three-piece lens at hand",
        LATE | SINGLE | {"lens": "in-bag, optic-captured"},
        "lens-in-vitreous-kept",
        lens="L2",
        does=f"hold-lens-still enlarge-main-wound remove-lens {CAPTURED} suture-main-wound",
    ),
    rupture(
        "Single-piece lens steady in the bag over a large tear, no lens to exchange for",
        LATE | SINGLE | {"lens": "in-bag", "three-piece-stock": "not-in-the-building"},
        "lens-in-vitreous-kept",
        does="hold-lens-still call-vitreoretinal",
        never=f"remove-lens {ANY_LENS}",
    ),
    rupture(
        "Single-piece lens in the bag, nobody can tell how steady it lies",
        LATE | SINGLE | {"lens": "in-bag", "lens-hold": "cannot tell"},
        "loose-lens",
        does="hold-lens-still call-vitreoretinal write-vitreoretinal-plan",
        never=f"remove-lens inject-miotic {ANY_LENS}",
    ),
    rupture(
        "Single-piece lens in the bag over a small round tear, seen steady at the second look",
        LATE
        | SINGLE
        | {"lens": "in-bag", "capsule-support": "round-tear"}
        | {"lens-hold": "cannot tell, steady"},
        "lens-in-vitreous-kept",
        lens="Lens left",
        does="hold-lens-still inspect-capsule leave-lens-in-place read-power-aloud",
        never="remove-lens place-lens-in-sulcus open-lens",
    ),
    rupture(
        "Single-piece lens in the sulcus, nobody can tell how steady it lies",
        LATE | SINGLE | {"lens": "in-sulcus", "lens-hold": "cannot tell"},
        "loose-lens",
        does="hold-lens-still call-vitreoretinal write-vitreoretinal-plan",
        never=f"remove-lens inject-miotic {ANY_LENS}",
    ),
    rupture(
        "Three-piece lens, steady until vitreous around it was cut",
        LATE | {"lens": "in-bag", "vitreous": "in-chamber, none", "lens-hold": "steady, sinking"},
        "loose-lens",
        does=f"{CUTS} {PROVES} hold-lens-still call-vitreoretinal write-vitreoretinal-plan",
        never=f"remove-lens inject-miotic {ANY_LENS}",
    ),
    rupture(
        "Single-piece lens found in the sulcus",
        LATE | SINGLE | {"lens": "in-sulcus, optic-captured"},
        "lens-in-vitreous-kept",
        lens="L2",
        does=f"remove-lens {CAPTURED}",
    ),
    rupture(
        "Single-piece lens with its optic captured and its haptics in the sulcus",
        LATE | SINGLE | {"lens": "optic-captured"},
        "lens-in-vitreous-kept",
        lens="L2",
        does=f"remove-lens {CAPTURED}",
    ),
    rupture(
        "Three-piece lens captured and steady",
        LATE | {"lens": "optic-captured"},
        "lens-in-vitreous-kept",
        lens="Lens left",
        never="remove-lens place-lens-in-sulcus open-lens",
    ),
    rupture(
        "Chamber lens steady, another type",
        LATE
        | {"lens": "fixed-without-capsule", "lens-type": "other-type"}
        | {"capsule-support": "not-enough", "front-opening": "torn"},
        "lens-in-vitreous-kept",
        lens="Lens left",
        never="remove-lens open-lens",
    ),
    rupture(
        "Three-piece lens in the bag over a large tear",
        LATE | {"lens": "in-bag, optic-captured"},
        "lens-in-vitreous-kept",
        lens="L2",
        does="recalculate-power read-power-aloud place-lens-in-sulcus capture-optic",
        never="remove-lens open-lens reduce-power-for-sulcus",
    ),
    rupture(
        "Three-piece lens, damaged rim, power acceptable in the sulcus",
        LATE | {"lens": "in-bag", "capsule-support": "rim-enough", "front-opening": "torn"},
        "lens-in-vitreous-kept",
        lens="L3",
        does="recalculate-power read-power-aloud place-lens-in-sulcus",
        never="remove-lens capture-optic",
    ),
    rupture(
        "Three-piece lens, damaged rim, power wrong in the sulcus",
        LATE
        | {"lens": "in-bag", "capsule-support": "rim-enough", "front-opening": "torn"}
        | {"power-fit": "wrong"},
        "lens-in-vitreous-kept",
        lens="L3",
        does="remove-lens recalculate-power reduce-power-for-sulcus place-lens-in-sulcus",
        never="capture-optic",
    ),
    rupture(
        "Loose lens of a type nobody can tell",
        LATE | {"lens": "loose, optic-captured", "lens-type": "cannot tell"},
        "lens-in-vitreous-kept",
        does=f"hold-lens-still remove-lens {CHECKED}",
    ),
    rupture(
        "Lens sinks as it is put in",
        {"stage": "lens-insertion", "lens-hold": "sinking"},
        "loose-lens",
        lens="LX close and refer",
        does="hold-lens-still call-vitreoretinal suture-main-wound write-vitreoretinal-plan",
        never="remove-lens inject-miotic turn-lens",
    ),
    rupture(
        "Vitreous round a lens that was going in",
        {"stage": "lens-insertion", "vitreous": "in-chamber, none"}
        | {"lens": "loose, optic-captured"},
        "lens-in-vitreous-lost",
        does=f"hold-lens-still {CUTS} {PROVES} place-lens-in-sulcus",
    ),
    rupture(
        "Nobody can tell the stage, no lens is in the eye",
        {"stage": "cannot tell", "lens": "none, optic-captured"},
        "lens-in-vitreous-kept",
        does="prepare-cutter place-lens-in-sulcus",
    ),
    rupture(
        "Nobody can tell the stage, a lens is in the bag over a round tear",
        {"stage": "cannot tell", "lens": "in-bag", "capsule-support": "round-tear"},
        "lens-in-vitreous-kept",
        does="hold-lens-still leave-lens-in-place",
        never="remove-lens",
    ),
    rupture(
        "Nobody can tell the stage, nor whether a lens is in the eye",
        {"stage": "cannot tell", "lens": "cannot tell"},
        "loose-lens",
        lens="LX",
        does="call-vitreoretinal write-vitreoretinal-plan",
        never=f"remove-lens inject-miotic {ANY_LENS}",
    ),
    rupture(
        "Nobody can tell where the lens lies",
        LATE | {"lens": "cannot tell"},
        "loose-lens",
        never=f"remove-lens inject-miotic {ANY_LENS}",
    ),
)

SITUATIONS = LENS_ALREADY_IN
