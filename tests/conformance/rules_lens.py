"""Requirements 25 to 33: the lens."""

from __future__ import annotations

from tests.conformance.acts import (
    NUCLEUS,
    PLACE_LENS,
    PLACE_OUTSIDE_BAG,
)
from tests.conformance.monitors import (
    Rule,
    all_of,
    before,
    each_of,
    last_answer_before,
    only_while,
)
from tests.conformance.trace import Trace, did, doctored, ended, surely

SULCUS = ("place-lens-in-sulcus",)
CHAMBER = ("place-chamber-lens",)
HELD = ("in-bag", "in-sulcus", "optic-captured")
NO_SCAFFOLD = tuple(act for act in PLACE_LENS if act != "place-scaffold-lens")
LENS_CHANGES = ("remove-lens", "place-lens-in-sulcus", "place-chamber-lens", "place-scaffold-lens")


def no_reduced_power_is_captured(trace: Trace) -> str:
    """No optic is captured whose power was reduced for the sulcus."""
    removed = trace.did("remove-lens")
    for place in trace.did("capture-optic"):
        after = max((each for each in removed if each < place), default=-1)
        if any(after < each < place for each in trace.did("reduce-power-for-sulcus")):
            return "an optic of reduced power is captured"
    return ""


def keeps_the_pupil_for_what_is_left(trace: Trace) -> str:
    """A miotic comes with nothing left and a lens that is held, or just before a chamber lens."""
    for place in trace.did("inject-miotic"):
        event = trace.events[place]
        for_chamber_lens = event.name in trace.acts() and event.step.endswith("a-chamber-lens")
        nothing_left = surely(event.known, "left-behind", "nothing")
        if not for_chamber_lens and not (nothing_left and surely(event.known, "lens", *HELD)):
            return "a miotic with something left to do behind the pupil"
    return ""


RULES = (
    Rule(
        25,
        "No single-piece acrylic lens in the sulcus.",
        "S55, S56",
        only_while((*SULCUS, "place-scaffold-lens", "capture-optic"), "lens-type", "three-piece"),
        doctored(did(SULCUS[0], lens_type="three-piece single-piece-acrylic"), ended("lens-in")),
    ),
    Rule(
        26,
        "A lens in the bag only with a secure round opening.",
        "S60; common practice",
        only_while(("place-lens-in-bag",), "posterior-opening", "round-and-secure"),
        doctored(did("place-lens-in-bag", posterior_opening="not-secure"), ended("lens-in")),
    ),
    Rule(
        27,
        "Capture only with a whole, centred opening smaller than the optic.",
        "S59, S61",
        only_while(("capture-optic",), "front-opening", "capturable"),
        doctored(did("capture-optic", front_opening="capturable torn"), ended("lens-in")),
    ),
    Rule(
        28,
        "Power is worked out again and read aloud when the lens leaves the plane of the bag.",
        "S63 to S66",
        each_of(PLACE_OUTSIDE_BAG, ("recalculate-power", "read-power-aloud"), since=LENS_CHANGES),
        doctored(did("recalculate-power"), did(SULCUS[0]), ended("lens-in")),
    ),
    Rule(
        29,
        "No reduction for an optic that is captured.",
        "S59, S64; sources differ",
        no_reduced_power_is_captured,
        doctored(
            did("reduce-power-for-sulcus"), did(SULCUS[0]), did("capture-optic"), ended("lens-in")
        ),
    ),
    Rule(
        30,
        "Model, power, eye and expiry are checked aloud before every lens is opened.",
        "S70; common practice",
        before(("open-lens",), ("check-lens-aloud",), since=("open-lens", "remove-lens")),
        doctored(did("check-lens-aloud"), did("open-lens"), did("open-lens"), ended("lens-in")),
    ),
    Rule(
        31,
        "A chamber lens only after an iridectomy and a measured length.",
        "memory",
        each_of(CHAMBER, ("measure-white-to-white", "cut-iridectomy")),
        doctored(did("measure-white-to-white"), did(CHAMBER[0]), ended("lens-in")),
    ),
    Rule(
        32,
        "No lens on poor or unseen support, in poor view, or in an unstable eye.",
        "S27, S16",
        all_of(
            only_while(NO_SCAFFOLD, "cornea", "clear-enough"),
            last_answer_before(NO_SCAFFOLD, "suprachoroidal", "no-signs", since=NUCLEUS),
            last_answer_before(NO_SCAFFOLD, "comfort", "comfortable", since=NUCLEUS),
            only_while(SULCUS, "capsule-support", "round-tear", "front-rim-whole", "rim-enough"),
            only_while(("place-scaffold-lens",), "scaffold-conditions", "all-met"),
            last_answer_before(("place-scaffold-lens",), "suprachoroidal", "no-signs"),
        ),
        doctored(
            did(SULCUS[0], cornea="clear-enough", capsule_support="rim-enough not-enough"),
            ended("lens-in"),
        ),
        "Under a scaffold, view and comfort stand as answered at the start: the piece on "
        "viscoelastic does not wait.",
    ),
    Rule(
        33,
        "A miotic only when nothing is left to remove and the lens is placed.",
        "S71; common practice",
        keeps_the_pupil_for_what_is_left,
        doctored(did("inject-miotic", lens="in-sulcus", left_behind="nuclear"), ended("lens-in")),
        "A chamber lens needs the small pupil before it goes in.",
    ),
)
