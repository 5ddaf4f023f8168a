"""Where the pathway departs from the derived table, each with its reason, as in the notes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from tests.conformance.decision_table import LEVELS, NUCLEUS, SUPPORT, VITREOUS

Cell = tuple[str, str, str]


@dataclass(frozen=True)
class Departure:
    """`draft` and `why` stand in the notes in these words.

    `cells` are those where another lens plan comes out than the table allows. A departure without
    one stays within the table, or is one of order; `shown_by` is a script that shows it, with the
    lens plan it ends in.
    """

    draft: str
    why: str
    cells: frozenset[Cell] = frozenset()
    shown_by: Mapping[str, str] = field(default_factory=dict)
    lens: str = ""


def _doubted() -> frozenset[Cell]:
    """Every cell of a vitreous that nobody can tell, where the table allows a lens alone."""
    return frozenset(
        (nucleus, "V?", support)
        for nucleus in "ABCD"
        for support in LEVELS
        if support != "S-?" and (nucleus, support) != ("D", "S-4")
    )


DEPARTURES = (
    Departure(
        "Firm or whole nucleus with vitreous at the tear and a small round tear: captured",
        "Support and vitreous are looked at again after the nucleus is out; what is seen then "
        "decides.",
        frozenset({("C", "V1", "S-1"), ("D", "V1", "S-1")}),
    ),
    Departure(
        "Small round tear, vitreous came through: captured preferred, bag when secure",
        "Same preference, put in one order.",
        shown_by={**VITREOUS["V2"], **SUPPORT["S-1"], "front-opening": "not-capturable"},
        lens="L1",
    ),
    Departure(
        "Vitreous at the tear: hold back, stain, cut only what comes through",
        "One place for vitreous.",
        shown_by={**VITREOUS["V1"], **SUPPORT["S-2a"]},
        lens="L2",
    ),
    Departure(
        "Whole nucleus, vitreous at a wound: no lens or captured, senior advice",
        "The questions before a lens carry the doubt; the senior surgeon has been called in the "
        "first minute.",
        shown_by={**NUCLEUS["D"], **VITREOUS["V3"], **SUPPORT["S-1"]},
        lens="L2",
    ),
    Departure(
        "Dropped: lens or none",
        'The agreement is a finding; with `not-agreed` every row reads "none today".',
        shown_by={**NUCLEUS["E"], **SUPPORT["S-2a"], "lens-agreed": "not-agreed"},
        lens="LX",
    ),
    Departure(
        "Dropped with a small round tear",
        "The combination is unlikely, and a support nobody is sure of holds no lens.",
        shown_by={**NUCLEUS["E"], **VITREOUS["V1"], **SUPPORT["S-1"]},
        lens="LX",
    ),
    Departure(
        "Too little support: no lens, or a trained fixation",
        "The unit's choice and the operator's training open the other ways.",
        shown_by={**VITREOUS["V2"], **SUPPORT["S-4"]},
        lens="LX",
    ),
    Departure(
        "Too little support with vitreous at a wound: also no lens",
        "Vitreous has been cleared by then.",
        frozenset({("D", "V3", "S-4")}),
    ),
    Departure(
        'Vitreous "cannot tell": as at the tear',
        "Gel that cannot be seen cannot be cut.",
        _doubted(),
    ),
    Departure(
        "Three axes first",
        "Support cannot be seen behind a nucleus.",
        shown_by={**NUCLEUS["C"], **SUPPORT["S-2a"]},
        lens="L2",
    ),
    Departure(
        "Front opening in doubt",
        "What cannot be seen cannot hold a lens.",
        shown_by={"front-opening": "cannot tell"},
        lens="LX",
    ),
    Departure(
        "Damaged rim with a whole opening",
        "With a weak zonule, capture puts load on what is weak.",
        shown_by={**SUPPORT["S-3"], "front-opening": "capturable"},
        lens="L3",
    ),
)
