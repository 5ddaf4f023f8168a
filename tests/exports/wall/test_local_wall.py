"""What a unit's own sheet adds to the wall: its name, and where things lie."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from chamberwise.engine.local.localising import localised
from chamberwise.engine.model.library import Library
from chamberwise.engine.reading.library import load_library, read_file
from chamberwise.exports.paper.sheet import Page, Role
from chamberwise.exports.paper.sizes import Paper, Sized
from chamberwise.exports.wall.extract import wall_chart
from chamberwise.exports.wall.make import make
from chamberwise.exports.wall.text import text

from tests.exports.flow.stage import FLAGSHIP, PROTOCOLS, assert_lawful, order, printed

UNIT = "Harbour Eye Unit (invented)"


@cache
def library() -> Library:
    sheet = read_file(PROTOCOLS / "demonstration" / "harbour-eye-unit.yaml")
    return localised(load_library(PROTOCOLS), sheet).library


def pages(sized: Sized) -> tuple[Page, ...]:
    asked = order(library(), FLAGSHIP, sized)
    return make(replace(asked, control=replace(asked.control, unit=UNIT))).pages


@pytest.mark.parametrize("paper", [Paper.A4, Paper.A3, Paper.A1])
def test_the_unit_and_its_places_are_on_the_wall(paper: Paper) -> None:
    made = pages(Sized(paper))
    for page in made:
        assert_lawful(page, 8.5)
    head = [each for each in made[0].texts if each.text == UNIT]
    assert len(head) == 1
    title = next(each for each in made[0].texts if each.role is Role.TITLE)
    assert title.y <= head[0].y < title.y + title.height + head[0].height


def test_what_is_needed_at_once_is_told_with_its_place_and_time() -> None:
    """The sheet says: the red box lies on the trolley, 20 s away."""
    first, *others = pages(Sized(Paper.A3))
    assert "Red box marked R. Rupture trolley in the corridor" in printed([first])
    assert "20 s to fetch" in printed([first])
    told = [each.text for page in (first, *others) for each in page.texts]
    assert sum("20\u00a0s to fetch" in each for each in told) == 5
    assert not any("20 s" in each for each in told)
    assert "Cutter pack 23 G" not in printed([first])
    assert "Cutter pack 23 G" in printed(others)


def test_places_are_read_aloud_too() -> None:
    told = text(wall_chart(library(), FLAGSHIP))
    assert "Where it lies\n  Capsule rupture box: Red box marked R." in told
    assert "Where it lies" not in text(wall_chart(load_library(PROTOCOLS).library, FLAGSHIP))
