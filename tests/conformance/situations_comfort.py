"""Situations of a view that fails and of a patient who cannot keep still."""

from __future__ import annotations

from tests.conformance.situation import dropped, rupture
from tests.conformance.situations_begin import ANY_LENS

VIEW_AND_COMFORT = (
    rupture(
        "Cornea too cloudy from the start",
        {"cornea": "too-cloudy", "left-behind": "nuclear", "lens": "none"},
        "piece-left-no-lens",
        lens="LX",
        does="call-vitreoretinal cover-tear inject-cefuroxime write-vitreoretinal-plan",
        never=f"phaco-fragment lift-pieces cut-vitreous {ANY_LENS}",
    ),
    rupture(
        "Nobody can tell whether the view is good enough",
        {"cornea": "cannot tell", "left-behind": "nuclear", "lens": "none"},
        "piece-left-no-lens",
        lens="LX",
        never=f"phaco-fragment lift-pieces cut-vitreous {ANY_LENS}",
    ),
    rupture(
        "Cornea clouds over during the nucleus",
        {"nucleus-front": "soft-or-small, nothing", "cornea": "clear-enough, too-cloudy"},
        "nothing-left-no-lens",
        lens="LX",
        does="phaco-fragment leave-aphakic",
        never=ANY_LENS,
    ),
    rupture(
        "Patient in pain, room for lidocaine",
        {"comfort": "uncomfortable, comfortable"},
        "lens-in-vitreous-kept",
        lens="L2",
        does="add-up-lidocaine fill-with-dispersive-viscoelastic top-up-block place-lens-in-sulcus",
    ),
    rupture(
        "Patient in pain, lidocaine at its ceiling",
        {"comfort": "uncomfortable, comfortable", "lidocaine-total": "at-ceiling"},
        "lens-in-vitreous-kept",
        does="add-up-lidocaine place-lens-in-sulcus",
        never="top-up-block",
    ),
    rupture(
        "Patient in pain, nobody knows how much lidocaine was given",
        {"comfort": "uncomfortable, comfortable", "lidocaine-total": "cannot tell"},
        "lens-in-vitreous-kept",
        never="top-up-block",
    ),
    rupture(
        "Patient moves whatever is done",
        {"comfort": "uncomfortable", "left-behind": "nuclear", "lens": "none"},
        "piece-left-no-lens",
        lens="LX",
        does="add-up-lidocaine top-up-block call-vitreoretinal inject-cefuroxime",
        never=f"lift-pieces {ANY_LENS}",
    ),
    rupture(
        "Nobody can tell whether the patient is comfortable",
        {"comfort": "cannot tell", "left-behind": "nuclear", "lens": "none"},
        "piece-left-no-lens",
        never=f"lift-pieces {ANY_LENS}",
    ),
    rupture(
        "Patient coughs just before the lens and settles",
        {"is-the-patient-still-before-lens": "uncomfortable, comfortable"},
        "lens-in-vitreous-kept",
        lens="L2",
        does="inspect-capsule fill-with-dispersive-viscoelastic add-up-lidocaine "
        "place-lens-in-sulcus",
    ),
    rupture(
        "Patient coughs just before the lens and does not settle",
        {"is-the-patient-still-before-lens": "uncomfortable"},
        "nothing-left-no-lens",
        lens="LX",
        never=ANY_LENS,
    ),
    dropped(
        "Patient restless before a lens that the vitreoretinal surgeon had agreed to",
        {
            "nucleus-behind": "gone",
            "lens-agreed": "agreed",
            "is-the-patient-still-before-lens": "uncomfortable",
        },
        "piece-left-no-lens",
        lens="LX",
        never=ANY_LENS,
    ),
    dropped(
        "Cornea too cloudy after a drop",
        {"cornea": "too-cloudy", "lens": "none"},
        "piece-left-no-lens",
        lens="LX",
        does="announce-drop call-vitreoretinal cover-tear write-vitreoretinal-plan",
        never=f"levitate-piece cut-vitreous inject-miotic {ANY_LENS}",
    ),
    dropped(
        "Patient moves whatever is done after a drop",
        {"comfort": "uncomfortable", "lens": "none"},
        "piece-left-no-lens",
        does="announce-drop call-vitreoretinal add-up-lidocaine write-vitreoretinal-plan",
        never=f"levitate-piece {ANY_LENS}",
    ),
)

SITUATIONS = VIEW_AND_COMFORT
