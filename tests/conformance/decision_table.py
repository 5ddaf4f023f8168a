"""The decision table that the fact sheet derives, as it stands there, and how its cells are read.

Source: our own table, derived cell by cell from marked facts. It needs a surgeon's sign-off; that
the pathway agrees with it proves agreement and nothing else.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

LEVELS = ("S-1", "S-2a", "S-2b", "S-3", "S-4", "S-?")


@dataclass(frozen=True)
class Row:
    """One row: what is left of the nucleus, where vitreous is, and the cells as written."""

    nucleus: str
    vitreous: str
    steps: str
    """The nucleus step and the vitreous step of the fact sheet; `v0 n0` is neither."""
    small_tear: str
    rim_whole: str
    rim_enough: str
    not_enough: str


# nucleus, vitreous, steps, S-1, S-2a / S-2b, S-3, S-4
WRITTEN = (
    Row("A", "V0", "v0 n0", "L1", "L2 / L3", "L3", "L4"),
    Row("A", "V1", "v1 n0", "L1 if held back, else L2", "L2 / L3", "L3", "L4"),
    Row("A", "V2", "v2 n0", "L2 preferred, L1 if secure", "L2 / L3", "L3", "L4"),
    Row("A", "V3", "v3 n0", "L2 preferred, L1 if secure", "L2 / L3", "L3", "L4 or LX"),
    Row("B", "V0", "v0 nB", "L1", "L2 / L3", "L3", "L4"),
    Row("B", "V1", "v1 nB", "L1/L2", "L2 / L3", "L3", "L4"),
    Row("B", "V2", "v2 nB", "L2", "L2 / L3", "L3", "L4"),
    Row("B", "V3", "v3 nB", "L2", "L2 / L3", "L3", "L4/LX"),
    Row("C", "V0", "v0 nC", "L1 if still intact-edged", "L2 / L3", "L3", "L4"),
    Row("C", "V1", "v1 nC", "L2", "L2 / L3", "L3", "L4"),
    Row("C", "V2", "v2 nC", "L2", "L2 / L3", "L3", "L4/LX"),
    Row("C", "V3", "v3 nC", "L2", "L2 / L3", "L3", "L4/LX"),
    Row("D", "V0", "v0 nD", "L1 if tear still small", "L2 / L3", "L3", "L4"),
    Row("D", "V1", "v1 nD", "L2", "L2 / L3", "L3", "L4/LX"),
    Row("D", "V2", "v2 nD", "L2", "L2 / L3", "L3", "L4/LX"),
    Row("D", "V3", "v3 nD", "LX or L2", "L2 / L3", "L3", "LX"),
    Row("E", "V0", "stain nE", "as E/V1", "as E/V1", "as E/V1", "as E/V1"),
    Row("E", "V1", "v1 nE", "L2 or LX", "L2 / L3 or LX", "L3 or LX", "LX"),
    Row("E", "V2", "v2 nE", "L2 or LX", "L2 / L3 or LX", "L3 or LX", "LX"),
    Row("E", "V3", "v3 nE", "L2 or LX", "L2 / L3 or LX", "L3 if quick and stable, else LX", "LX"),
)
"""The two rows for any nucleus follow in `cell`: V? reads as V1, and S-? is always LX."""

BY_PLACE = {(row.nucleus, row.vitreous): row for row in WRITTEN}
IN_DOUBT = {"V?": "V1"}


def cell(nucleus: str, vitreous: str, support: str) -> frozenset[str]:
    """Return the lens plans that a cell allows."""
    if support == "S-?":
        return frozenset({"LX"})
    row = BY_PLACE[nucleus, IN_DOUBT.get(vitreous, vitreous)]
    if row.small_tear.startswith("as "):
        return cell(*row.small_tear.removeprefix("as ").split("/"), support)
    whole, split = row.rim_whole.split(" / ")
    or_none = " or LX" if "LX" in split else ""
    written = {
        "S-1": row.small_tear,
        "S-2a": whole + or_none,
        "S-2b": split,
        "S-3": row.rim_enough,
        "S-4": row.not_enough,
    }
    return frozenset(re.findall(r"L[1-4X]", written[support]))


NUCLEUS = {
    "A": {"nucleus-front": "nothing"},
    "B": {"nucleus-front": "soft-or-small, nothing"},
    "C": {"nucleus-front": "hard-or-large, nothing"},
    "D": {"nucleus-front": "whole, nothing"},
    "E": {"nucleus-behind": "gone", "lens-agreed": "agreed"},
}
VITREOUS = {
    "V0": {"vitreous": "none"},
    "V1": {"vitreous": "at-tear, at-tear, none"},
    "V2": {"vitreous": "in-chamber, none"},
    "V3": {"vitreous": "at-wound, none"},
    "V?": {"vitreous": "cannot tell"},
}
SUPPORT = {
    "S-1": {"capsule-support": "round-tear", "front-opening": "capturable"},
    "S-2a": {"capsule-support": "front-rim-whole", "front-opening": "capturable"},
    "S-2b": {"capsule-support": "front-rim-whole", "front-opening": "not-capturable"},
    "S-3": {"capsule-support": "rim-enough", "front-opening": "torn"},
    "S-4": {"capsule-support": "not-enough", "front-opening": "torn"},
    "S-?": {"capsule-support": "cannot tell"},
}
"""What each code is called in the pathway. Everything else is answered as usual."""

FREED, TWO_PORTS = "Free the wound first", "Two-port vitrectomy"
VITREOUS_STEPS = {
    "v0": (),
    "stain": ("Stain and look",),
    "v1": ("Hold back at the tear and stain", "Stain and look"),
    "v2": (TWO_PORTS,),
    "v3": (FREED, TWO_PORTS),
}
LIFT_SOFT, BY_HAND = "Lift, then low-flow removal", "Lift, enlarge the wound, deliver by hand"
NUCLEUS_STEPS = {
    "n0": (),
    "nB": (LIFT_SOFT,),
    "nC": (BY_HAND,),
    "nD": ("Enlarge the front opening and convert", BY_HAND),
    "nE": ("Dropped nucleus pathway", "Leave the piece"),
}
SOFT_BY_VITREOUS = {
    "v0": "Slow-motion ultrasound",
    "v1": "Slow-motion ultrasound",
    "v2": "Cutter at a low rate",
    "v3": "Cutter at a low rate",
}
"""Soft pieces go by ultrasound over viscoelastic, or with the cutter once vitreous was forward."""
