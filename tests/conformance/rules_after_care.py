"""Requirements 44 to 52: what is owed to the patient and to the record."""

from __future__ import annotations

from tests.conformance.acts import MANOEUVRES, NOT_CLOSED_HERE
from tests.conformance.driver import DROPPED, RUPTURE, VITRECTOMY
from tests.conformance.monitors import (
    Rule,
    all_of,
    at_end,
    before,
    entered_by,
    if_at_end,
    if_did,
)
from tests.conformance.trace import Trace, asked, did, doctored, ended

RETINAL_LOOKS = ("book-two-week-retinal-look", "book-six-week-retinal-look")
HELD = frozenset({"bleed-held-by-hand"})


def speaks_of_what_fell(trace: Trace) -> str:
    """Once a piece is said to lie behind or to have fallen, the call is made or owed."""
    looks = trace.where("asked", "nucleus-behind", "fall")
    fell = any(trace.events[place].answer in {"visible", "gone", "fell"} for place in looks)
    return at_end("call-vitreoretinal", "hand-eye-over")(trace) if fell else ""


RULES = (
    Rule(
        44,
        "The vitreoretinal surgeon is spoken to on the same day once a piece has dropped.",
        "S27 to S33; common practice",
        all_of(
            speaks_of_what_fell,
            if_did("leave-piece", then=at_end("call-vitreoretinal")),
        ),
        doctored(did("leave-piece"), asked("fall", "fell"), ended("piece-left-no-lens")),
    ),
    Rule(
        45,
        "A vitreoretinal plan is written before discharge when nucleus is left.",
        "common practice",
        if_at_end(
            "left-behind",
            "nuclear",
            then=at_end("write-vitreoretinal-plan", unless=NOT_CLOSED_HERE | HELD),
        ),
        doctored(did("leave-piece"), ended("nothing-left-no-lens", left_behind="nuclear")),
        "A wound held by hand has the vitreoretinal surgeon in theatre.",
    ),
    Rule(
        46,
        "The patient is told on the same day, on record.",
        "S113; common practice",
        all_of(
            at_end("tell-patient", unless=NOT_CLOSED_HERE),
            at_end("record-data-set", unless=NOT_CLOSED_HERE),
        ),
        doctored(did("record-data-set"), ended("lens-in-vitreous-kept")),
    ),
    Rule(
        47,
        "Warnings of retina, infection and pressure are given in writing.",
        "S95; common practice",
        at_end("give-written-warnings", unless=NOT_CLOSED_HERE),
        doctored(did("tell-patient"), ended("lens-in-vitreous-kept")),
    ),
    Rule(
        48,
        "A review on the next day is booked.",
        "S83",
        at_end("book-next-day-review", unless=NOT_CLOSED_HERE),
        doctored(did("tell-patient"), ended("lens-in-vitreous-kept")),
    ),
    Rule(
        49,
        "A dilated look at the retina is booked after vitreous loss.",
        "S95, S52",
        if_at_end(
            "vitreous-lost",
            "came-forward",
            then=at_end(*RETINAL_LOOKS, unless=NOT_CLOSED_HERE),
        ),
        doctored(did("cut-vitreous"), ended("lens-in-vitreous-lost")),
    ),
    Rule(
        50,
        "The case is entered in the audit with the published definition.",
        "S100",
        at_end("enter-audit", unless=NOT_CLOSED_HERE),
        doctored(did("tell-patient"), ended("lens-in-vitreous-kept")),
    ),
    Rule(
        52,
        "Who operates is agreed aloud, a takeover offered or refused, before the first manoeuvre.",
        "derived; S110",
        all_of(
            entered_by(
                RUPTURE, DROPPED, VITRECTOMY, then=before(MANOEUVRES, ("agree-who-operates",))
            ),
            before(("cut-vitreous",), ("agree-who-operates",)),
        ),
        doctored(did("lower-infusion"), did("lift-pieces"), ended("lens-in-vitreous-kept")),
        "Closing entered for itself carries on with the operator of the record.",
    ),
)
