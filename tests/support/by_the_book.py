"""A run of the main pathway as the pathway has it, to plant known faults in."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from chamberwise.engine.drill.entries import Ending
from chamberwise.engine.drill.run import Run
from chamberwise.engine.model.drill import CriticalAct

from tests.conformance.driver import GOOD, RUPTURE, library, walk
from tests.support.running import ran

VITREOUS_FORWARD = {"vitreous": "in-chamber, none"}

CRITICAL = (
    CriticalAct("hold-tip-still", 5, 10),
    CriticalAct("fill-with-dispersive-viscoelastic", 15, 30),
    CriticalAct("withdraw-tip", None, None),
    CriticalAct("call-for-help", 20, 45),
    CriticalAct("fetch-box", 60, 120),
)
ORDERS = (
    "hold-tip-still < fill-with-dispersive-viscoelastic, "
    "fill-with-dispersive-viscoelastic < withdraw-tip, "
    "stain-with-triamcinolone < cut-vitreous, call-for-help < cut-vitreous"
)


@cache
def doings() -> tuple[str, ...]:
    """Return what is done and looked at from the rupture to the end, with vitreous forward."""
    return tuple(
        event.name if event.kind == "did" else f"{event.name}={event.answer}"
        for event in walk(VITREOUS_FORWARD).events
        if event.kind in ("did", "asked")
    )


def truth() -> Mapping[str, str]:
    """Return what is true at first in an eye that is walked so."""
    first = {**GOOD, **VITREOUS_FORWARD, "lens": "none"}
    return {finding: values.split(",")[0] for finding, values in first.items()}


def drilled(script: list[str], ending: Ending = Ending.STOP_RULE, **more: object) -> Run:
    """Return the run of a script on the main pathway."""
    return ran(
        library(),
        RUPTURE,
        ", ".join(script),
        truth(),
        critical=CRITICAL,
        orders=ORDERS,
        ending=ending,
        **more,  # type: ignore[arg-type]
    )


def without(script: list[str], doing: str) -> list[str]:
    """Return a script without the first of some doing."""
    place = script.index(doing)
    return [*script[:place], *script[place + 1 :]]


def moved(script: list[str], doing: str, before: str) -> list[str]:
    """Return a script in which the first of some doing comes before the first of another."""
    left = without(script, doing)
    place = left.index(before)
    return [*left[:place], doing, *left[place:]]
