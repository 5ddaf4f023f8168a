"""Requirements 1 to 10: the first minute and the nucleus."""

from __future__ import annotations

from tests.conformance.acts import (
    CUT,
    DRAINING,
    FILL,
    MANOEUVRES,
    NUCLEUS,
    PREPARED,
    REMOVE_NUCLEUS,
    TAMPONADE,
    VITREOUS,
    WITHDRAW,
)
from tests.conformance.driver import DROPPED, RUPTURE
from tests.conformance.monitors import (
    Rule,
    all_of,
    answered_before,
    at_end,
    at_most,
    before,
    entered_by,
    if_ended,
    only_while,
)
from tests.conformance.trace import Trace, asked, did, doctored, ended, surely

FILLED = did("fill-with-dispersive-viscoelastic")
CLOSING_BEGINS = ("count-what-is-left",)
AXES = ("nucleus-behind", "nucleus-front", "vitreous")


def leaves_what_fell(trace: Trace) -> str:
    """Before a piece is removed, nothing was seen behind since the last manoeuvre, or it was left.

    What was seen is the last answer to "what lies behind" or to "did a piece fall".
    """
    looks = trace.where("asked", "nucleus-behind", "fall")
    left = trace.did("leave-piece")
    for place in trace.did(*REMOVE_NUCLEUS):
        if surely(trace.events[place].known, "nucleus-behind", "nothing"):
            continue
        look = max((each for each in looks if each < place), default=-1)
        nothing_fell = look >= 0 and trace.events[look].answer in {"nothing", "stayed"}
        moved = any(
            look < each < place
            for each in trace.did(*NUCLEUS, *CUT)
            if each not in _same_step(trace, place)
        )
        if not (nothing_fell and not moved) and not any(look < each < place for each in left):
            return f"{trace.events[place].name} with a piece behind that nobody has left"
    return ""


def _same_step(trace: Trace, place: int) -> set[int]:
    step = trace.events[place].step
    return {each for each in range(place) if step and trace.events[each].step == step}


RULES = (
    Rule(
        1,
        "The chamber is filled before any tip leaves.",
        "S3, S4, S7, S8",
        all_of(
            before(WITHDRAW, FILL, since=(*DRAINING, *WITHDRAW)),
            before(("withdraw-infusion",), FILL, since=DRAINING),
        ),
        doctored(FILLED, did("phaco-fragment"), did("withdraw-tip"), ended("lens-in")),
    ),
    Rule(
        2,
        "No aspiration or ultrasound on an open capsule without viscoelastic in place.",
        "S3, S7; derived",
        before(
            (*REMOVE_NUCLEUS, "aspirate-cortex"),
            TAMPONADE,
            since=(*WITHDRAW, "rinse-viscoelastic-away"),
        ),
        doctored(FILLED, did("withdraw-tip"), did("phaco-fragment"), ended("lens-in")),
        "Viscoelastic removal at the very end is an aspiration too, low and in front of the lens.",
    ),
    Rule(
        3,
        "Infusion is lowered before any further manoeuvre.",
        "S8",
        before(MANOEUVRES, ("lower-infusion",)),
        doctored(FILLED, did("aspirate-cortex"), ended("lens-in")),
    ),
    Rule(
        4,
        "The rupture is said aloud and kit and help are called before any further manoeuvre.",
        "S4; common practice",
        entered_by(
            RUPTURE,
            DROPPED,
            then=all_of(
                before(MANOEUVRES, ("announce-rupture", "announce-drop")),
                before(MANOEUVRES, ("fetch-box", "prepare-cutter")),
                before(MANOEUVRES, ("call-for-help", "call-vitreoretinal")),
            ),
        ),
        doctored(did("announce-rupture"), did("call-for-help"), did("lift-pieces"), ended("x")),
        "The vitrectomy and closing pathways are entered by a team that has said it already.",
    ),
    Rule(
        5,
        "What lies behind, what lies in front, and vitreous are asked before nucleus or vitreous.",
        "S4, S5",
        all_of(
            entered_by(
                RUPTURE,
                then=answered_before((*NUCLEUS, *VITREOUS), *AXES, until=CLOSING_BEGINS),
            ),
            entered_by(DROPPED, then=answered_before(NUCLEUS, *AXES)),
            answered_before(("levitate-piece",), "nucleus-behind"),
        ),
        doctored(asked("vitreous", "none"), did("lift-pieces"), ended("lens-in")),
        "Support is asked after the nucleus. A levitation, and the hold and stain in a vitrectomy "
        "entered for itself or at closing, do not wait for every axis.",
    ),
    Rule(
        6,
        "No hydrodissection or rotation when rupture is known or the cataract is polar.",
        "S19, S12",
        if_ended(*PREPARED, then=at_end("plan-without-hydrodissection")),
        doctored(did("consent-for-two-stages"), ended("prepared")),
        "That no pathway contains either act is checked in form.",
    ),
    Rule(
        7,
        "No ultrasound with vitreous in the chamber.",
        "S22",
        only_while(("phaco-fragment",), "vitreous", "none", "at-tear"),
        doctored(did("phaco-fragment", vitreous="none in-chamber"), ended("lens-in")),
    ),
    Rule(
        8,
        "No vectis, loop or expression of a piece in vitreous.",
        "S22",
        only_while(("deliver-with-vectis", "viscoexpress-piece"), "vitreous", "none", "at-tear"),
        doctored(did("deliver-with-vectis"), ended("lens-in")),
        "Strong flow is taught; no finding holds the flow.",
    ),
    Rule(
        9,
        "Nothing goes after a piece that fell.",
        "S26, S27",
        leaves_what_fell,
        doctored(
            did("leave-piece"),
            asked("nucleus-behind", "gone"),
            did("deliver-with-vectis", nucleus_behind="gone"),
            ended("piece-left-no-lens"),
        ),
    ),
    Rule(
        10,
        "Levitation only of a piece in view, by a trained operator, once.",
        "S24",
        all_of(
            only_while(("levitate-piece",), "nucleus-behind", "visible"),
            only_while(("levitate-piece",), "trained-levitation", "trained"),
            at_most(1, "levitate-piece"),
        ),
        doctored(
            did("levitate-piece", nucleus_behind="visible gone", trained_levitation="trained"),
            ended("piece-left-no-lens"),
        ),
    ),
)
