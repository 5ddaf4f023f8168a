"""Requirements 11 to 24: vitreous, stain, cortex."""

from __future__ import annotations

from tests.conformance.acts import BACK, BLEED, CUT, HANDED_OVER, PLACE_LENS
from tests.conformance.monitors import Rule, all_of, before, only_while
from tests.conformance.trace import Trace, asked, did, doctored, ended, surely

STAIN = ("stain-with-triamcinolone",)
CLEAR = ("none", "at-tear")


def proves_the_chamber_clear(trace: Trace) -> str:
    """After the last cut comes a stain and a look at it, or vitreous is left and referred."""
    if trace.end.name in BLEED | HANDED_OVER | (BACK - {"chamber-clear", "held-back"}):
        return ""
    if not (cuts := trace.did(*CUT)):
        return ""
    given_up = any(place > cuts[-1] for place in trace.did("call-vitreoretinal"))
    stains = [place for place in trace.did(*STAIN) if place > cuts[-1]]
    if not stains:
        return "" if given_up else "vitreous was cut and no stain followed"
    looks = [place for place in trace.where("asked", "vitreous") if place > stains[-1]]
    clear = bool(looks) and trace.events[looks[-1]].answer in CLEAR
    return "" if clear or given_up else "the last stain was not seen to be clear"


def goes_on_only_with_a_steady_tear(trace: Trace) -> str:
    """After a first round, cortex is aspirated only while the tear is surely steady."""
    for place in trace.did("aspirate-cortex")[1:]:
        if not surely(trace.events[place].known, "tear", "steady"):
            return "more cortex while the tear may be growing"
    return ""


RULES = (
    Rule(
        11,
        "Infusion and cutter are apart before vitreous is cut.",
        "S11, S47",
        before(CUT, ("separate-ports",)),
        doctored(did("insert-cutter"), did("cut-vitreous"), ended("chamber-clear")),
    ),
    Rule(
        12,
        "No vitrectomy through an unsecured main wound.",
        "S48, S27",
        only_while(CUT, "main-wound", "sealed", "sutured"),
        doctored(did("cut-vitreous", main_wound="sealed leaking"), ended("chamber-clear")),
    ),
    Rule(
        13,
        "No aspiration of vitreous with the cutting off.",
        "common practice",
        before(
            ("insert-cutter", *CUT),
            ("start-cutting-before-aspiration",),
            since=("withdraw-cutter",),
        ),
        doctored(
            did("start-cutting-before-aspiration"),
            did("withdraw-cutter"),
            did("cut-vitreous"),
            ended("chamber-clear"),
        ),
        "Cutting starts first. That it goes on is taught, since no finding holds the pedal.",
    ),
    Rule(
        18,
        "The infusion is raised only once vitreous is cleared.",
        "common practice",
        only_while(("raise-infusion",), "vitreous", *CLEAR),
        doctored(did("raise-infusion", vitreous="at-tear in-chamber"), ended("lens-in")),
    ),
    Rule(
        20,
        "Every stain is read aloud as mg, mL and mg per mL first.",
        "S38; derived",
        before(STAIN, ("read-stain-aloud",), since=STAIN),
        doctored(did("read-stain-aloud"), did(STAIN[0]), did(STAIN[0]), ended("chamber-clear")),
    ),
    Rule(
        21,
        "After a vitrectomy chamber and wounds are stain-negative.",
        "S42",
        proves_the_chamber_clear,
        doctored(did(STAIN[0]), did("cut-vitreous"), ended("chamber-clear")),
        "A suspected bleed, a fallen piece, a stop, and an eye handed over come before the proof.",
    ),
    Rule(
        22,
        "Vitreous is cleared before cortex.",
        "S5, S8",
        only_while(("aspirate-cortex",), "vitreous", *CLEAR),
        doctored(did("aspirate-cortex", vitreous="at-wound"), ended("lens-in")),
    ),
    Rule(
        23,
        "No more cortex when the tear grows or the rim is at risk.",
        "common practice",
        goes_on_only_with_a_steady_tear,
        doctored(
            did("aspirate-cortex"),
            asked("tear", "growing"),
            did("aspirate-cortex", tear="growing"),
            ended("lens-in"),
        ),
    ),
    Rule(
        24,
        "Vitreous is cleared before any lens, the scaffold included.",
        "common practice; S21",
        all_of(
            only_while((*PLACE_LENS,), "vitreous", *CLEAR),
            only_while(("open-lens",), "vitreous", *CLEAR),
        ),
        doctored(did("place-scaffold-lens"), ended("lens-in")),
    ),
)
