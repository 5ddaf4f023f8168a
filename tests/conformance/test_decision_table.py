"""The derived decision table against what the pathway leads to, cell by cell.

Source of the table: our own, derived; it needs a surgeon's sign-off.
"""

from __future__ import annotations

import re
from itertools import product

import pytest
from chamberwise.engine.cases.table import cases

from tests.conformance.acts import REMOVE_NUCLEUS
from tests.conformance.decision_table import (
    IN_DOUBT,
    LEVELS,
    NUCLEUS,
    NUCLEUS_STEPS,
    SOFT_BY_VITREOUS,
    SUPPORT,
    VITREOUS,
    VITREOUS_STEPS,
    WRITTEN,
    Row,
    cell,
)
from tests.conformance.departures import DEPARTURES, Cell, Departure
from tests.conformance.driver import FOLDER, RUPTURE, Walk, library, walk

EVERY_CELL = tuple(product(NUCLEUS, VITREOUS, LEVELS))
LISTED = {each: departure for departure in DEPARTURES for each in departure.cells}


def at(nucleus: str, vitreous: str, support: str) -> Walk:
    return walk({**NUCLEUS[nucleus], **VITREOUS[vitreous], **SUPPORT[support]})


def lens_of(walked: Walk) -> str:
    """Return the code of the last lens plan; L4 is L4 even where the eye is left without a lens."""
    plans = walked.plans["lens"]
    return "L4" if any(each.startswith("L4") for each in plans) else plans[-1][:2]


@pytest.mark.parametrize("place", EVERY_CELL, ids=" ".join)
def test_the_lens_plan_is_the_table_s_or_a_listed_departure(place: Cell) -> None:
    found, allowed = lens_of(at(*place)), cell(*place)
    if place in LISTED:
        assert found not in allowed, "a listed departure no longer occurs: take it off the list"
    else:
        assert found in allowed


@pytest.mark.parametrize("row", WRITTEN, ids=lambda each: f"{each.nucleus} {each.vitreous}")
def test_the_steps_before_the_lens_are_the_table_s(row: Row) -> None:
    walked = at(row.nucleus, row.vitreous, "S-2a")
    of_vitreous, of_nucleus = row.steps.split()
    wanted = [*NUCLEUS_STEPS[of_nucleus]]
    if of_nucleus == "nB":
        wanted.append(SOFT_BY_VITREOUS[of_vitreous])
    if row.nucleus in "BCD" and row.vitreous != "V0":
        wanted.insert(0, "Secure on viscoelastic first")
    assert_begin_alike(walked.plans.get("nucleus", []), wanted)
    assert_begin_alike(walked.plans.get("vitreous", []), list(VITREOUS_STEPS[of_vitreous]))


def assert_begin_alike(found: list[str], wanted: list[str]) -> None:
    assert len(found) == len(wanted), found
    assert all(each.startswith(start) for each, start in zip(found, wanted, strict=True)), found


@pytest.mark.parametrize("nucleus", "BCD")
@pytest.mark.parametrize("vitreous", ["V2", "V3"])
def test_vitreous_in_the_way_goes_before_the_nucleus(nucleus: str, vitreous: str) -> None:
    acts = at(nucleus, vitreous, "S-2a").acts
    removed = min(acts.index(act) for act in REMOVE_NUCLEUS if act in acts)
    assert acts.index("cut-vitreous") < removed
    assert "phaco-fragment" not in acts


@pytest.mark.parametrize("place", [each for each in EVERY_CELL if each[0] == "E"], ids=" ".join)
def test_a_piece_in_view_and_one_out_of_view_get_the_same_lens(place: Cell) -> None:
    visible = {**NUCLEUS["E"], "nucleus-behind": "visible"}
    seen = walk({**visible, **VITREOUS[place[1]], **SUPPORT[place[2]]})
    assert lens_of(seen) == lens_of(at(*place))


@pytest.mark.parametrize("nucleus", NUCLEUS)
@pytest.mark.parametrize("support", LEVELS)
def test_a_doubt_that_stain_settles_is_read_as_the_table_says(nucleus: str, support: str) -> None:
    settled = {**NUCLEUS[nucleus], **SUPPORT[support], "vitreous": "cannot tell, at-tear, none"}
    place = (nucleus, IN_DOUBT["V?"], support)
    assert lens_of(walk(settled)) == lens_of(at(*place))


def test_no_cell_is_listed_twice_or_outside_the_table() -> None:
    listed = [each for departure in DEPARTURES for each in departure.cells]
    assert len(listed) == len(set(listed))
    assert set(listed) <= set(EVERY_CELL)


@pytest.mark.parametrize("departure", DEPARTURES, ids=lambda each: each.draft)
def test_a_departure_without_a_cell_is_shown_by_a_walk(departure: Departure) -> None:
    if not departure.cells:
        assert walk(departure.shown_by).plans["lens"][-1].startswith(departure.lens)


def test_support_is_asked_after_the_nucleus() -> None:
    steps = [place.step for place in at("C", "V0", "S-2a").steps]
    assert steps.index("deliver-the-piece") < steps.index("how-much-support")


def test_the_departures_are_those_of_the_notes() -> None:
    notes = (FOLDER / "notes" / "posterior-capsule-rupture.md").read_text(encoding="utf-8")
    part = notes.split("## Where the table of cases departs from the draft table")[1]
    rows = re.findall(r"^\| (?!draft|---)(.+?) \| .+? \| (.+?) \|$", part.split("##")[0], re.M)
    assert rows == [(each.draft, each.why) for each in DEPARTURES]


def test_the_table_of_cases_gives_the_same_lens_as_the_walks() -> None:
    of_cases = {case.combination: case for case in cases(library(), RUPTURE)}
    codes = {
        "A": "nothing",
        "B": "soft-or-small",
        "C": "hard-or-large",
        "D": "whole",
    }
    places = product(codes, ["V0", "V1", "V2", "V3"], LEVELS[:5])
    for nucleus, vitreous, support in places:
        combination = (
            ("nucleus-behind", "nothing"),
            ("nucleus-front", codes[nucleus]),
            ("vitreous", VITREOUS[vitreous]["vitreous"].split(",")[0]),
            *SUPPORT[support].items(),
        )
        plans = of_cases[combination].plan["lens"]
        assert list(plans) == at(nucleus, vitreous, support).plans["lens"], combination
