"""Faults planted in what a sheet says: language, medicines, dates, document control."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date

from chamberwise.exports.paper.sheet import Item, Role, Run, Text

from tests.exports.audit.sheets import Case, step, text

Plant = Callable[[Case], Case]


def says(words: str, role: Role = Role.STEP) -> Plant:
    """Add a text with these words."""
    return lambda case: case.and_also(replace(step(words), role=role))


def note(words: str, role: Role) -> Plant:
    """Add a line in small type."""
    return lambda case: case.and_also(text(words, 200, 215, 8, role, width=205))


def without(words: str) -> Plant:
    """Take these words out of every text."""

    def spared(each: Item) -> Item:
        if not isinstance(each, Text):
            return each
        runs = (Run(run.text.replace(words, ""), run.weight) for run in each.runs)
        return replace(each, runs=tuple(runs))

    return lambda case: case.with_items(tuple(spared(each) for each in case.items))


LONG = "Pull and hold and lift and hold and turn and hold and pull and hold and " * 2

LANGUAGE: Mapping[str, Plant] = {
    "LAN-01": note(LONG[:60], Role.STEP),
    "LAN-02": note(LONG, Role.CAUTION),
    "LAN-06": says("Do not stop unless not stable"),
    "LAN-08": says("Is no vitreous at the wound?", Role.QUESTION),
}

MEDICINES: Mapping[str, Plant] = {
    "MED-01": says("Give 5.0 mg"),
    "MED-02": says("Inject .5 mL"),
    "MED-03": says("Give 10mg"),
    "MED-04": says("Draw up epinephrine1 mg"),
    "MED-05": says("Give 50 ug"),
    "MED-06": says("Give 50 mcg"),
    "MED-07": says("Give 4U"),
    "MED-08": says("Treat OD"),
    "MED-09": says("Give drops QD"),
    "MED-10": says("Inject 2 cc"),
    "MED-14": says("Draw up 2 mLs"),
    "MED-17": says("Use adrenaline 1:1000"),
    "MED-21": says("Draw up 0.5\nmL of saline"),
}

CONTROL: Mapping[str, Plant] = {
    "DOC-01": without("posterior\u2011capsule\u2011rupture"),
    "DOC-02": without("not kept current"),
    "DOC-03": lambda case: case.controlled(review_by=date(2030, 11, 1)),
    "DOC-04": lambda case: case.controlled(review_by=date(2026, 11, 20)),
    "DOC-05": lambda case: case.controlled(approved_by=None),
    "DOC-07": lambda case: case.and_also(text("Checked 07/03/26", 240, 215, 10, Role.NOTE)),
    "DOC-10": lambda case: case.controlled(translation="Deutsch"),
    "DOC-09": lambda case: case.controlled(unit=None),
    "STR-17": without("Follow local protocol."),
}
