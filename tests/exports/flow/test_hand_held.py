"""The laws of the page hold on every hand-held sheet of every shipped pathway, and of odd ones."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import NamedTuple

import pytest
from chamberwise.engine.model.step import Line
from chamberwise.exports.case_sheet.make import make as case_sheet
from chamberwise.exports.kit.make import make as kit
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.pocket.make import make as pocket
from chamberwise.exports.printing.order import Made, Order, UnfitError
from chamberwise.exports.roles.make import make as roles
from chamberwise.exports.script.make import make as script

from tests.exports.flow.small import action, small
from tests.exports.flow.stage import (
    FLAGSHIP,
    LANDSCAPE,
    approved,
    assert_lawful,
    order,
    shipped,
)
from tests.support.build import end, library, pathway
from tests.support.thorough import cases


class Room(NamedTuple):
    make: Callable[[Order], Made]
    least: float


ROOMS = {
    "pocket": Room(pocket, 10),
    "roles": Room(roles, 10),
    "kit": Room(kit, 10),
    "script": Room(script, 14),
    "case_sheet": Room(case_sheet, 10),
}
PATHWAYS = tuple(shipped().pathways)
HAS_CASES = [name for name in PATHWAYS if shipped().pathways[name].cases]
SIZES = (Sized(Paper.A4), Sized(Paper.A4, Turn.LANDSCAPE), Sized(Paper.A3, Turn.LANDSCAPE))
SHEETS = [
    (room, name) for room in ROOMS for name in PATHWAYS if room != "case_sheet" or name in HAS_CASES
]
EVERY = [(room, name, sized) for room, name in SHEETS for sized in SIZES]
LONG = [("case_sheet", FLAGSHIP, sized) for sized in SIZES if sized != LANDSCAPE]
"""Seconds each, for the cases are found anew."""


@pytest.mark.parametrize(
    ("room", "name", "sized"), cases((each for each in EVERY if each not in LONG), LONG), ids=str
)
def test_every_page_is_lawful(room: str, name: str, sized: Sized) -> None:
    make, least = ROOMS[room]
    made = make(order(shipped(), name, sized))
    assert made.pages
    for page in made.pages:
        assert_lawful(page, least)


@pytest.mark.parametrize("room", ROOMS)
@pytest.mark.parametrize("timed", [True, False])
def test_a_small_pathway_prints(room: str, timed: bool) -> None:
    make, least = ROOMS[room]
    for page in make(approved(order(small(timed=timed), "small"))).pages:
        assert_lawful(page, least)


@pytest.mark.parametrize("room", ["pocket", "roles", "script"])
def test_greek_and_cyrillic_print(room: str) -> None:
    steps = (
        action("a", "b", Line("surgeon", "Γεμίστε τον θάλαμο με ιξωδοελαστικό.")),
        action("b", "done", Line("nurse", "Держите наконечник неподвижно в глазу.")),
    )
    make, least = ROOMS[room]
    for page in make(order(library(pathway("odd", *steps, end("done"))), "odd")).pages:
        assert_lawful(page, least)


@pytest.mark.parametrize("room", ["pocket", "roles", "script"])
def test_a_word_that_no_column_holds_is_told(room: str) -> None:
    step = replace(action("a", "done", Line("surgeon", "7" * 90)), short="7" * 90)
    odd = library(pathway("odd", step, end("done")))
    with pytest.raises(UnfitError) as told:
        ROOMS[room].make(order(odd, "odd"))
    assert told.value.ways_out


def test_what_a_pathway_lacks_is_told_with_how_to_add_it() -> None:
    bare = library(pathway("bare", end("done")))
    for room in ("roles", "kit", "case_sheet"):
        with pytest.raises(UnfitError) as told:
            ROOMS[room].make(order(bare, "bare"))
        assert "Add" in told.value.ways_out[0] or "Name" in told.value.ways_out[0]
    for room in ("pocket", "script"):
        assert ROOMS[room].make(order(bare, "bare")).pages
