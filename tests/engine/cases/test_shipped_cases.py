"""The shipped tables of cases are complete."""

from __future__ import annotations

from dataclasses import replace
from functools import cache, partial
from math import prod
from pathlib import Path

import pytest
from chamberwise.engine.cases.case import run_case
from chamberwise.engine.cases.doubt import cannot_be_undone
from chamberwise.engine.cases.hang import Change, Granted
from chamberwise.engine.cases.summary import summary
from chamberwise.engine.cases.table import whole_cases
from chamberwise.engine.cases.way import Acted
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.reading.library import load_library

FOLDER = Path(__file__).resolve().parents[3] / "protocols"
LIBRARY: Library = load_library(FOLDER).library
RUPTURE = "posterior-capsule-rupture"
found_in = cache(partial(whole_cases, LIBRARY))
WITH_TABLE = [name for name, pathway in LIBRARY.pathways.items() if pathway.cases]


@pytest.mark.parametrize("name", WITH_TABLE)
def test_every_combination_leads_to_one_plan_and_none_is_open(name: str) -> None:
    found = found_in(name)
    table = LIBRARY.pathways[name].cases
    assert table
    axes = [len(LIBRARY.finding(name, each).values) for each in table.over]
    assert len({case.combination for case in found}) == len(found) == prod(axes)
    assert [case.problem for case in found if case.problem] == []
    assert all(case.outcome for case in found)
    counted = summary(found)
    assert counted.open == 0
    impossible = [case for case in found if case.improbable]
    assert counted.looked_at_again == len(impossible) > 0
    assert counted.never_told == 0


@pytest.mark.parametrize("name", WITH_TABLE)
def test_whatever_is_otherwise_the_table_has_an_answer(name: str) -> None:
    changes = [
        (hang.taken.finding, other.value)
        for case in found_in(name)
        for hang in case.hangs_on
        for other in hang.others
        if Change.OPEN in other.changes
    ]
    assert changes == []


def test_a_lens_without_capsule_is_a_named_local_choice() -> None:
    named = {
        (hang.taken.finding, hang.taken.value)
        for case in found_in(RUPTURE)
        for hang in case.hangs_on
        if hang.taken.kind is Granted.CHOICE
    }
    assert named == {("lens-without-capsule", "leave-aphakic")}


def test_each_assumption_a_case_hangs_on_changes_it_when_walked() -> None:
    table = LIBRARY.pathways[RUPTURE].cases
    assert table
    for case in found_in(RUPTURE)[::97]:
        hangs = [each for each in case.hangs_on if each.taken.kind is Granted.ASSUMED]
        assert hangs
        for hang in hangs:
            pairs = {**dict(table.assume), hang.taken.finding: hang.others[0].value}
            changed = replace(table, assume=tuple(pairs.items()))
            other = run_case(LIBRARY, RUPTURE, case.combination, changed)
            assert (other.plan, other.outcome) != (case.plan, case.outcome)


@pytest.mark.parametrize("act", ["place-lens-in-bag", "cut-vitreous", "remove-lens"])
def test_what_goes_into_or_out_of_the_eye_cannot_be_undone(act: str) -> None:
    assert cannot_be_undone(LIBRARY, Acted(Place(RUPTURE, "any"), act))


@pytest.mark.parametrize("act", ["stain-with-triamcinolone", "leave-aphakic", "inspect-capsule"])
def test_looking_and_leaving_alone_can_be_undone(act: str) -> None:
    assert not cannot_be_undone(LIBRARY, Acted(Place(RUPTURE, "any"), act))
