"""A step under another name is the same step; a name alone changes nothing that a team meets."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.comparing.behaviour import Alike, behaviour
from chamberwise.engine.comparing.change import Kind, Rating
from chamberwise.engine.comparing.changes import changes_of_pathway
from chamberwise.engine.comparing.names.calling import in_new_names
from chamberwise.engine.comparing.names.named import Named, Names, Sort
from chamberwise.engine.comparing.names.same_pathway import pathways_called, same_pathways
from chamberwise.engine.comparing.names.same_step import same_steps
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Line
from hypothesis import given

from tests.engine.comparing.shipped import shipped
from tests.mutants.small import FILL, small
from tests.support.strategies import libraries


def steps(pathway: str, names: dict[str, str]) -> Names:
    return {Named(pathway, Sort.STEP, was): now for was, now in names.items()}


def called_otherwise(pathway: Pathway, names: dict[str, str]) -> Pathway:
    library = Library(small().shared, {pathway.id: pathway})
    return in_new_names(library, steps(pathway.id, names)).pathways[pathway.id]


def test_renamed_steps_are_found_again() -> None:
    one = small().pathways["one"]
    names = {"look": "look-here", "fill": "fill-up", "closed": "shut"}
    new = called_otherwise(one, names)
    assert same_steps(one, new) == names
    called = steps("one", names)
    found = [*changes_of_pathway(in_new_names(small(), called).pathways["one"], new, called)]
    assert {each.kind for each in found} == {Kind.RENAMED}
    assert {each.rating for each in found} == {Rating.EDITORIAL}


def test_a_step_renamed_and_reworded_is_told_by_its_place() -> None:
    one = small().pathways["one"]
    new = called_otherwise(one, {"fill": "fill-up"})
    lines = (Line("surgeon", "Do fill  it.", act="fill"), *FILL.lines[1:])
    reworded = replace(new.steps["fill-up"], lines=lines)
    new = replace(new, steps={**new.steps, "fill-up": reworded})
    assert same_steps(one, new) == {"fill": "fill-up"}


def test_a_step_that_does_something_else_is_another_step() -> None:
    one = small().pathways["one"]
    new = called_otherwise(one, {"fill": "fill-up"})
    other = replace(new.steps["fill-up"], lines=(Line("surgeon", "Do hold.", act="hold"),))
    new = replace(new, steps={**new.steps, "fill-up": other})
    assert same_steps(one, new) == {}


def test_a_pathway_renamed_is_found_again_wherever_it_is_spoken_of() -> None:
    old = shipped().library
    name = "closing-and-after-care"
    new = pathways_called(old, {name: "closing-anew"})
    assert same_pathways(old, new) == {name: "closing-anew"}
    assert name in repr(old.pathways)
    assert name not in repr((new.pathways, new.shared))
    assert repr(pathways_called(new, {"closing-anew": name}).pathways) == repr(old.pathways)


def test_a_pathway_that_came_for_another_is_another_pathway() -> None:
    old = shipped().library
    without = {name: each for name, each in old.pathways.items() if name != "dropped-nucleus"}
    another = replace(small().pathways["one"], id="another")
    new = Library(old.shared, {**without, "another": another})
    assert same_pathways(old, new) == {}


def test_of_two_that_came_neither_is_taken_for_the_one_that_is_gone() -> None:
    old = shipped().library
    name = "anterior-vitrectomy"
    one = pathways_called(old, {name: "one"}).pathways
    other = pathways_called(old, {name: "other"}).pathways
    assert same_pathways(old, Library(old.shared, {**one, "other": other["other"]})) == {}


@given(libraries())
def test_names_alone_change_nothing_that_a_team_meets(library: Library) -> None:
    names = {
        Named(name, Sort.STEP, step): f"x-{step}"
        for name, pathway in library.pathways.items()
        for step in pathway.steps
    }
    renamed = in_new_names(library, names)
    assert isinstance(behaviour((library, "p0"), (renamed, "p0")), Alike)
    found = same_steps(library.pathways["p0"], renamed.pathways["p0"])
    assert all(found[step] == f"x-{step}" for step in found)
