"""Every step of every shipped pathway names who does and who says each thing, in every density."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import pytest
from chamberwise.engine.meaning.advance import Passage
from chamberwise.engine.meaning.state import State, start
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.step import Action, Handover
from chamberwise.engine.reading.library import Loaded, load_library
from chamberwise.engine.walk.walk import Walk, set_out
from chamberwise.exports.record.cautions import cautions_at
from chamberwise.tui.present.parts import text_lines
from chamberwise.tui.present.step_page import Density, body, head
from chamberwise.tui.present.step_view import step_view

from tests.tui.stage import MORNING, TODAY

PROTOCOLS = Path(__file__).parents[3] / "protocols"


@lru_cache(maxsize=1)
def shipped() -> Loaded:
    return load_library(PROTOCOLS)


def standing_on(place: Place) -> Walk:
    library = shipped().library
    walk = set_out(library, place.pathway, "", MORNING)
    state = replace(start(library, place.pathway), place=place)
    assert isinstance(state, State)
    return replace(walk, first=Passage(state, ()))


PLACES = [
    Place(name, step.id)
    for name, pathway in shipped().library.pathways.items()
    for step in pathway.steps.values()
    if isinstance(step, Action | Handover)
]


@pytest.mark.parametrize("place", PLACES, ids=lambda place: "/".join(place))
def test_every_line_names_its_duty(place: Place) -> None:
    library = shipped().library
    step = library.step(place)
    view = step_view(standing_on(place), TODAY)
    duties = library.words(place.pathway).duties
    names = (
        {duties[line.who].title for line in step.lines} if isinstance(step, Action) else {"Reader"}
    )
    for density in Density:
        page = "\n".join(text_lines([*head(view), *body(view, density)], 200))
        assert [name for name in names if name not in page] == []


@pytest.mark.parametrize("place", PLACES, ids=lambda place: "/".join(place))
def test_every_caution_on_an_act_stands_where_the_act_is_done(place: Place) -> None:
    library = shipped().library
    step = library.step(place)
    acts = {line.act for line in getattr(step, "lines", ()) if line.act}
    guarding = {
        caution.harm
        for other in library.pathways[place.pathway].steps.values()
        for caution in other.cautions
        if caution.guards in acts
    }
    shown = [caution.harm for caution in cautions_at(library, place)]
    assert guarding <= set(shown)
    assert len(shown) == len(set(shown))
