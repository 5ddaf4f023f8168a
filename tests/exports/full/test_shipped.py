"""The shipped pathways on paper: every step, answer and arrow is found again in the file."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from chamberwise.engine.model.step import Branch, Handover, Question
from chamberwise.engine.reading.library import load_library
from chamberwise.exports.control.content import day
from chamberwise.exports.control.frame import UNTIL_SIZE
from chamberwise.exports.full.content import ON, Kind
from chamberwise.exports.full.extract import full_pathway
from chamberwise.exports.full.make import make
from chamberwise.exports.full.placed import placed_differences
from chamberwise.exports.full.round_trip import differences
from chamberwise.exports.full.text import text as as_text
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Role
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.typesetting.compiling import to_pdf

from tests.exports.full.made_up import order, sheet
from tests.exports.full.test_pages import check
from tests.support.thorough import cases

LIBRARY = load_library(Path(__file__).resolve().parents[3] / "protocols").library
PATHWAYS = list(LIBRARY.pathways)
A3 = Sized(Paper.A3, Turn.LANDSCAPE)


@pytest.mark.parametrize(
    ("name", "sized"),
    cases(
        [*((name, Sized(Paper.A4)) for name in PATHWAYS), (PATHWAYS[0], A3)],
        ((name, A3) for name in PATHWAYS[1:]),
    ),
    ids=str,
)
def test_everything_is_found_again(name: str, sized: Sized) -> None:
    content = full_pathway(LIBRARY, name)
    pages = make(replace(order(sized), library=LIBRARY, pathway=name)).pages
    check(pages)
    assert placed_differences(content, pages) == ()
    assert differences(content, to_pdf(sheet(pages))) == ()


@pytest.mark.parametrize("name", PATHWAYS)
def test_content_has_every_arrow_of_the_file(name: str) -> None:
    pathway, content = LIBRARY.pathways[name], full_pathway(LIBRARY, name)
    names = list(pathway.steps)
    for step, told in zip(pathway.steps.values(), content.steps, strict=True):
        arrows = {way.id: names[way.to - 1] for way in told.ways}
        if step.bound:
            assert arrows.pop("after that") == step.bound.after_that
        match step:
            case Question():
                assert arrows == {each.id: each.go_to for each in step.answers}
            case Handover():
                assert arrows == dict(step.on_return)
            case Branch():
                rows = [arrow for key, arrow in arrows.items() if key.startswith("row ")]
                assert rows == [row.go_to for row in step.rows]
                assert arrows.get("otherwise") == step.otherwise
                assert arrows.get("not known") == step.not_known
            case _:
                assert list(arrows.values()) == [getattr(step, "go_to", None)] or not arrows


@pytest.mark.parametrize("name", PATHWAYS)
def test_a_caution_stands_before_the_line_it_guards(name: str) -> None:
    pathway, content = LIBRARY.pathways[name], full_pathway(LIBRARY, name)
    for step, told in zip(pathway.steps.values(), content.steps, strict=True):
        acts = [line.act for line in getattr(step, "lines", ())]
        for caution in step.cautions:
            shown = next(each for each in told.cautions if plain(each.instead) == caution.instead)
            first = acts.index(caution.guards) if caution.guards in acts and caution.guards else 0
            assert shown.before == first


@pytest.mark.parametrize("name", PATHWAYS)
def test_the_text_form_says_every_step_answer_and_target_in_order(name: str) -> None:
    content = full_pathway(LIBRARY, name)
    told = " ".join(as_text(content).split())
    at = 0
    for step in content.steps:
        at = told.index(f"Step {step.number}. ", at)
        after = told.index("Sources", at) if step is content.steps[-1] else len(told)
        for way in step.ways:
            label = "Go on" if way.id == ON else plain(way.label)
            begins = told.index(label, at, after)
            assert f"go to step {way.to}." in told[begins : begins + len(label) + 200]
        for line in step.lines:
            assert plain(line.text) in told[at:]


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def test_each_danger_stands_once_at_the_front_with_its_steps() -> None:
    content = full_pathway(LIBRARY, "posterior-capsule-rupture")
    told = [(each.harm, each.instead) for each in content.dangers]
    assert len(told) == len(set(told))
    for danger in content.dangers:
        for number in danger.steps:
            cautions = content.steps[number - 1].cautions
            assert any(each.harm == danger.harm for each in cautions)


def test_a_choice_that_is_not_set_shows_every_position() -> None:
    text = as_text(full_pathway(LIBRARY, "dropped-nucleus"))
    assert "Posterior assisted levitation: NOT SET LOCALLY: One attempt" in " ".join(text.split())


def test_a_handover_names_the_chart_and_each_way_back() -> None:
    content = full_pathway(LIBRARY, "dropped-nucleus")
    step = next(each for each in content.steps if each.kind is Kind.HANDOVER and len(each.ways) > 2)
    assert step.heading == "Over to: Anterior vitrectomy"
    assert step.lines[0].is_said
    assert step.lines[0].text == "Change to the vitrectomy chart."
    assert all(way.label.startswith(("Back with: ", "At most ")) for way in step.ways)


@pytest.mark.parametrize("name", PATHWAYS)
def test_whoever_leafs_through_finds_a_step_at_the_foot(name: str) -> None:
    """As in a dictionary: the foot names the first and the last step that begins on its page."""
    content = full_pathway(LIBRARY, name)
    pages = make(replace(order(Sized(Paper.A4)), library=LIBRARY, pathway=name)).pages
    named: list[int] = []
    for page in pages:
        (told,) = (each for each in page.texts if "Page " in each.text and " of " in each.text)
        assert told.style.size >= UNTIL_SIZE
        found = [int(each) for each in re.findall(r"\d+", told.text.partition("Page")[0])]
        if found:
            numbers = [*range(found[0], found[-1] + 1)]
            drawn = {each.text for each in page.texts if each.role is Role.NUMBER}
            assert {str(number) for number in numbers} <= drawn
            named += numbers
    assert named == [step.number for step in content.steps]


@pytest.mark.parametrize("name", PATHWAYS)
def test_every_page_says_in_large_letters_when_it_is_out_of_date(name: str) -> None:
    asked = replace(order(Sized(Paper.A4)), library=LIBRARY, pathway=name)
    due = f"Review by {day(asked.control.review_by)}, out of date after that"
    for page in make(asked).pages:
        (told,) = (each for each in page.texts if each.text == due)
        assert told.style.size >= UNTIL_SIZE
        assert told.style.ink is Ink.BLACK
