"""The calculations by name, each loaded when it is asked for."""

from __future__ import annotations

from collections.abc import Iterator
from importlib import import_module

from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.telling import as_told

NAMES = (
    "lens-power",
    "refraction-left",
    "srk-t",
    "holladay-1",
    "hoffer-q",
    "formula-spread",
    "nearest-lenses",
    "lens-to-sulcus",
    "optic-capture",
    "another-lens",
    "anterior-chamber-lens",
    "aphakia",
    "rupture-risk",
    "list-risk",
    "infusion-pressure",
    "dose",
    "dilution",
    "triamcinolone",
    "cefuroxime",
    "moxifloxacin",
    "phenylephrine",
    "acetylcholine",
    "carbachol",
    "lidocaine-ceiling",
    "lipid-rescue",
    "acetazolamide",
    "mannitol",
    "after-care-dates",
)
"""In the order of the list: the lens, the risk, the infusion, doses, the weeks after."""


def calculation(name: str) -> Calculation:
    """Return a calculation, in the language spoken. Raises `KeyError` for a wrong name."""
    if name not in NAMES:
        raise KeyError(name)
    module = f"chamberwise.engine.working.calculations.{name.replace('-', '_')}"
    found: Calculation = import_module(module).CALCULATION
    return as_told(found)


def calculations() -> Iterator[Calculation]:
    """Yield every calculation in the order of the list."""
    return (calculation(name) for name in NAMES)
