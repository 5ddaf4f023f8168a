"""Situations of support and of a new lens."""

from __future__ import annotations

from tests.conformance.situation import rupture
from tests.conformance.situations_begin import ANY_LENS

ROUND = {"capsule-support": "round-tear"}
RIM = {"capsule-support": "rim-enough", "front-opening": "torn"}
NONE = {"capsule-support": "not-enough", "front-opening": "torn"}
TOO_LARGE = {"front-opening": "not-capturable"}
CHECKED = "recalculate-power read-power-aloud check-lens-aloud open-lens"
CAPTURED = f"choose-three-piece-lens {CHECKED} place-lens-in-sulcus capture-optic"
IN_BAG = "make-tear-round read-power-aloud check-lens-aloud open-lens place-lens-in-bag"
UNCAPTURED = (
    "choose-three-piece-lens recalculate-power reduce-power-for-sulcus read-power-aloud "
    "check-lens-aloud open-lens place-lens-in-sulcus"
)

SUPPORT = (
    rupture(
        "Small central tear, vitreous back",
        ROUND,
        "lens-in-vitreous-kept",
        lens="L1",
        does=f"hold-vitreous-back {IN_BAG}",
        never="place-lens-in-sulcus reduce-power-for-sulcus cut-vitreous",
    ),
    rupture(
        "Small central tear held back at the tear by viscoelastic and stain",
        ROUND | {"vitreous": "at-tear, at-tear, none"},
        "lens-in-vitreous-kept",
        lens="L1",
        does=f"stain-with-triamcinolone {IN_BAG}",
        never="cut-vitreous",
    ),
    rupture(
        "Small central tear that does not round off, front opening fit for capture",
        ROUND | {"posterior-opening": "not-secure"},
        "lens-in-vitreous-kept",
        lens="L2",
        does=f"make-tear-round {CAPTURED}",
        never="place-lens-in-bag reduce-power-for-sulcus",
    ),
    rupture(
        "Small central tear that does not round off, front opening too large",
        ROUND | TOO_LARGE | {"posterior-opening": "cannot tell"},
        "lens-in-vitreous-kept",
        lens="L3",
        does=f"make-tear-round {UNCAPTURED}",
        never="place-lens-in-bag capture-optic",
    ),
    rupture(
        "Small tear runs to nothing that holds as it is rounded and vitreous is cut",
        ROUND
        | {"where-is-vitreous-after-rounding": "in-chamber", "posterior-opening": "not-secure"}
        | {"what-support-is-left-now": "not-enough"},
        "nothing-left-no-lens",
        lens="LX",
        does="make-tear-round cut-vitreous leave-aphakic",
        never=ANY_LENS,
    ),
    rupture(
        "A small tear runs as it is rounded and vitreous is cut; the front opening holds",
        ROUND
        | {"where-is-vitreous-after-rounding": "in-chamber", "posterior-opening": "not-secure"}
        | {"what-support-is-left-now": "front-rim-whole"},
        "lens-in-vitreous-lost",
        lens="L2",
        does=f"make-tear-round cut-vitreous {CAPTURED}",
        never="place-lens-in-bag",
    ),
    rupture(
        "Vitreous comes forward as the rim is tested",
        {"where-is-vitreous-before-lens": "in-chamber, none"},
        "lens-in-vitreous-lost",
        lens="L2",
        does=f"test-rim cut-vitreous stain-with-triamcinolone {CAPTURED}",
    ),
    rupture(
        "The cornea clouds over as vitreous is cut round a small tear",
        ROUND
        | {"where-is-vitreous-after-rounding": "in-chamber"}
        | {"is-the-view-clear-after-rounding": "too-cloudy"},
        "nothing-left-no-lens",
        lens="LX",
        does="make-tear-round cut-vitreous leave-aphakic",
        never=ANY_LENS,
    ),
    rupture(
        "Vitreous comes forward as a small tear is rounded; the edge is secure",
        ROUND | {"where-is-vitreous-after-rounding": "in-chamber"},
        "lens-in-vitreous-lost",
        lens="L1",
        does="make-tear-round cut-vitreous check-lens-aloud place-lens-in-bag suture-main-wound",
    ),
    rupture(
        "Small tear, vitreous came through, opening fit for capture",
        ROUND | {"vitreous": "in-chamber, none"},
        "lens-in-vitreous-lost",
        lens="L2",
        does=f"cut-vitreous {CAPTURED}",
        never="place-lens-in-bag reduce-power-for-sulcus",
    ),
    rupture(
        "Small tear, vitreous came through, opening too large to capture",
        ROUND | TOO_LARGE | {"vitreous": "in-chamber, none"},
        "lens-in-vitreous-lost",
        lens="L1",
        does=f"cut-vitreous {IN_BAG}",
    ),
    rupture(
        "Large tear, front rim whole and capturable",
        {},
        "lens-in-vitreous-kept",
        lens="L2",
        does=CAPTURED,
        never="place-lens-in-bag reduce-power-for-sulcus make-tear-round",
    ),
    rupture(
        "Large tear, front opening off centre",
        TOO_LARGE,
        "lens-in-vitreous-kept",
        lens="L3",
        does=UNCAPTURED,
        never="capture-optic place-lens-in-bag",
    ),
    rupture(
        "Front rim torn, two quadrants hold",
        RIM,
        "lens-in-vitreous-kept",
        lens="L3",
        does=f"test-rim {UNCAPTURED}",
        never="capture-optic place-lens-in-bag",
    ),
    rupture(
        "Damaged rim under an opening that is whole",
        {"capsule-support": "rim-enough"},
        "lens-in-vitreous-kept",
        lens="L3",
        does=UNCAPTURED,
        never="capture-optic",
    ),
    rupture(
        "Too little support, vitreous lost, operator untrained",
        NONE | {"vitreous": "in-chamber, none"},
        "nothing-left-no-lens",
        lens="LX",
        does="leave-aphakic write-lens-plan",
        never=ANY_LENS,
    ),
    rupture(
        "Too little support with vitreous in its place is tested twice",
        NONE,
        "nothing-left-no-lens",
        does="test-rim test-rim leave-aphakic",
        never=ANY_LENS,
    ),
    rupture(
        "Too little support on the first test, enough on the second",
        RIM | {"capsule-support": "not-enough, rim-enough"},
        "lens-in-vitreous-kept",
        lens="L3",
        does=f"test-rim test-rim {UNCAPTURED}",
    ),
    rupture(
        "Nobody can see what supports",
        {"capsule-support": "cannot tell"},
        "nothing-left-no-lens",
        lens="LX",
        does="leave-aphakic write-lens-plan",
        never=ANY_LENS,
    ),
    rupture(
        "Nobody can see the front opening, on two looks",
        {"front-opening": "cannot tell"},
        "nothing-left-no-lens",
        lens="LX",
        does="inspect-capsule inspect-capsule leave-aphakic",
        never=ANY_LENS,
    ),
    rupture(
        "A whole rim and a torn opening contradict each other; the second look finds a torn rim",
        {"capsule-support": "front-rim-whole, rim-enough", "front-opening": "torn"},
        "lens-in-vitreous-kept",
        lens="L3",
        does="inspect-capsule inspect-capsule reduce-power-for-sulcus place-lens-in-sulcus",
        never="capture-optic",
    ),
)

STOCK = (
    rupture(
        "No three-piece lens in the building, whole rim",
        {"three-piece-stock": "not-in-the-building"},
        "nothing-left-no-lens",
        lens="LX",
        does="leave-aphakic restock-lens-and-box write-lens-plan",
        never=ANY_LENS,
    ),
    rupture(
        "No three-piece lens in the building, damaged rim",
        RIM | {"three-piece-stock": "not-in-the-building"},
        "nothing-left-no-lens",
        lens="LX",
        never=ANY_LENS,
    ),
    rupture(
        "Nobody can tell whether a three-piece lens is here",
        {"three-piece-stock": "cannot tell"},
        "nothing-left-no-lens",
        lens="LX",
        never=ANY_LENS,
    ),
    rupture(
        "No three-piece lens in the building, small tear made round",
        ROUND | {"three-piece-stock": "not-in-the-building"},
        "lens-in-vitreous-kept",
        lens="L1",
        does=IN_BAG,
    ),
)

SITUATIONS = SUPPORT + STOCK
