"""For every rule a fault that it finds, and a sheet without it in which it finds nothing."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from chamberwise.exports.audit.audit import apply
from chamberwise.exports.audit.printed.read import read
from chamberwise.exports.audit.report import Found
from chamberwise.exports.audit.rule import Rule
from chamberwise.exports.audit.rules.registry import RULES
from chamberwise.exports.audit.subject import subject_of
from chamberwise.exports.audit.terms import Lighting

from tests.exports.audit import planted_form, planted_look, planted_words
from tests.exports.audit.planted_form import crossing
from tests.exports.audit.sheets import Case, card, tiled, wall

PLANTS = {
    **planted_look.LEGIBILITY,
    **planted_look.COLOUR,
    **planted_form.STRUCTURE,
    **planted_form.FLOW,
    **planted_form.PRINTING,
    **planted_words.LANGUAGE,
    **planted_words.MEDICINES,
    **planted_words.CONTROL,
}

CLEAN: dict[str, Callable[[], Case]] = {
    "LEG-05": card,
    "LEG-08": lambda: wall().under(lighting=Lighting.DIM),
    "FLO-07": lambda: crossing((205, 135), (205, 175))(wall()),
    "PRT-04": tiled,
    "COL-13": card,
}
"""Where the plain wall chart gives a rule no occasion, or its signal inks always give one."""


def found(rule: Rule, case: Case) -> tuple[list[Found], str]:
    faults, judged = apply(rule, subject_of(case.sheet, read(case.pdf), case.terms))
    assert judged.applies
    return faults, judged.worst


def clean(rule: Rule) -> Case:
    return CLEAN.get(rule.id, wall)()


def test_every_rule_has_a_planted_fault_and_no_plant_lacks_its_rule() -> None:
    assert sorted(PLANTS) == sorted(rule.id for rule in RULES)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_the_planted_fault_is_found_and_the_clean_sheet_is_let_through(rule: Rule) -> None:
    case = clean(rule)
    faults, worst = found(rule, case)
    assert faults == []
    assert worst or rule.id in ("DOC-05", "DOC-10"), (
        "the clean sheet gives the rule nothing to measure"
    )
    planted, told = found(rule, PLANTS[rule.id](case))
    assert planted
    assert told
    assert all(each.rule == rule.id and each.measured for each in planted)
    assert rule.id in MILDER or any(each.severity is rule.limit.severity for each in planted)


MILDER = {"LEG-11", "LEG-12", "LAN-01", "FLO-03", "FLO-05", "FLO-06", "COL-05", "COL-09", "PRT-02"}
"""Planted at the milder of two steps."""


@pytest.mark.parametrize(
    ("rule", "planted"),
    [
        ("FLO-09", "an arrow through the box"),
        ("FLO-09", "a box on a box"),
        ("FLO-09", "words on the words"),
        ("FLO-09", "a line on words"),
        ("FLO-09", "two arrows on one line"),
    ],
)
def test_each_kind_of_overlap_is_found(rule: str, planted: str) -> None:
    case = OVERLAPS[planted](wall())
    faults, _ = found(next(each for each in RULES if each.id == rule), case)
    assert any(each.measured.startswith(planted) for each in faults)


OVERLAPS: dict[str, Callable[[Case], Case]] = {
    "an arrow through the box": crossing((10, 180), (60, 210)),
    "a box on a box": lambda case: case.reshaped("p/end", x=160.0),
    "words on the words": lambda case: case.changed("Close the wound", x=34.0, y=151.0),
    "a line on words": lambda case: crossing((190, 147), (220, 147))(case),
    "two arrows on one line": crossing((180, 155), (200, 155), (200, 180)),
}
