"""Requirements 35 to 42: wounds, antibiotic, pressure, lidocaine."""

from __future__ import annotations

from tests.conformance.acts import BLEED, FILL, HANDED_OVER, NOT_CLOSED_HERE
from tests.conformance.monitors import (
    Rule,
    all_of,
    at_end,
    at_most,
    before,
    ends_with,
    only_while,
)
from tests.conformance.trace import Trace, did, doctored, ended

NOT_HERE = NOT_CLOSED_HERE | BLEED | HANDED_OVER
ANTIBIOTICS = ("inject-cefuroxime", "inject-local-antibiotic")
INTO_THE_EYE = (
    "inject-miotic",
    "stain-with-triamcinolone",
    "remove-viscoelastic",
    "hydrate-side-ports",
    "suture-main-wound",
)


def antibiotic_comes_last(trace: Trace) -> str:
    """Nothing opens or enters the eye after the antibiotic."""
    given = trace.did(*ANTIBIOTICS)
    later = [place for place in trace.did(*INTO_THE_EYE) if given and place > given[-1]]
    return f"{trace.events[later[0]].name} after the antibiotic" if later else ""


RULES = (
    Rule(
        35,
        "A wound that was enlarged or held vitreous is sutured.",
        "common practice",
        ends_with(
            "main-wound",
            "sealed",
            "sutured",
            unless=NOT_CLOSED_HERE,
        ),
        doctored(did("enlarge-main-wound"), ended("lens-in-vitreous-lost", main_wound="opened-up")),
    ),
    Rule(
        36,
        "Every wound is watertight and free of strands at the end.",
        "S52; common practice",
        ends_with("wounds", "dry-and-clear", unless=NOT_HERE),
        doctored(did("hydrate-side-ports"), ended("lens-in-vitreous-lost", wounds="leaking")),
        "In a bleed the wound is closed or held, whatever else it holds.",
    ),
    Rule(
        37,
        "An antibiotic is injected into the chamber once, at the end.",
        "S73, S74",
        all_of(
            at_end(*ANTIBIOTICS, unless=NOT_HERE),
            at_most(1, *ANTIBIOTICS),
            antibiotic_comes_last,
        ),
        doctored(did(ANTIBIOTICS[0]), did("hydrate-side-ports"), ended("lens-in-vitreous-lost")),
        "After a bleed, and in an eye handed over, the vitreoretinal surgeon decides.",
    ),
    Rule(
        38,
        "No cefuroxime in allergy.",
        "S73; S77",
        only_while(("inject-cefuroxime",), "antibiotic-allergy", "none-known"),
        doctored(did("inject-cefuroxime"), ended("lens-in-vitreous-lost")),
        "That no act injects vancomycin is checked in form.",
    ),
    Rule(
        39,
        "Acetazolamide only after its questions.",
        "S79",
        only_while(("give-acetazolamide",), "acetazolamide-risks", "none-found"),
        doctored(
            did("give-acetazolamide", acetazolamide_risks="none-found found"),
            ended("lens-in-vitreous-lost"),
        ),
    ),
    Rule(
        40,
        "A pressure plan when viscoelastic or stain stays, or vitreous was cut.",
        "S27, S80",
        all_of(
            at_end("write-pressure-plan", unless=NOT_HERE),
            at_end("give-acetazolamide", "give-pressure-drops", unless=NOT_HERE),
        ),
        doctored(did("cut-vitreous"), ended("lens-in-vitreous-lost")),
        "After a bleed, and in an eye handed over, the vitreoretinal surgeon decides.",
    ),
    Rule(
        41,
        "Lidocaine stays under the ceiling, every dose counted.",
        "S84 to S86",
        all_of(
            before(("top-up-block",), ("add-up-lidocaine",)),
            only_while(("top-up-block",), "lidocaine-total", "below-ceiling"),
            at_most(1, "top-up-block"),
        ),
        doctored(
            did("add-up-lidocaine"),
            did("top-up-block", lidocaine_total="at-ceiling"),
            ended("lens-in-vitreous-lost"),
        ),
    ),
    Rule(
        42,
        "A block is topped up only with the chamber sealed.",
        "common practice",
        before(("top-up-block",), FILL, since=("withdraw-tip", "withdraw-cutter")),
        doctored(did(*FILL), did("withdraw-tip"), did("top-up-block"), ended("lens-in")),
    ),
)
