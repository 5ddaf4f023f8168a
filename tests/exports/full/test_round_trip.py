"""A swapped label, a wrong number, a missing or foreign text: each is caught, and named."""

from __future__ import annotations

from dataclasses import replace

import pytest
from chamberwise.exports.full.content import FullPathway
from chamberwise.exports.full.make import make_from
from chamberwise.exports.full.placed import placed_differences
from chamberwise.exports.full.round_trip import differences
from chamberwise.exports.paper.sheet import Arrow, Item, Page, Role, Text
from chamberwise.exports.typesetting.compiling import to_pdf

from tests.exports.full.made_up import changed, made_up, order, sheet

CONTENT = made_up(12)
PAGES = make_from(CONTENT, order()).pages


def printed(content: FullPathway) -> bytes:
    return to_pdf(sheet(make_from(content, order()).pages))


def told_of(planted: FullPathway) -> str:
    found = differences(CONTENT, printed(planted))
    assert {each.rpartition("(read by ")[2] for each in found} == {"pypdf)", "pypdfium2)"}
    return "\n".join(found)


def test_nothing_planted_nothing_found() -> None:
    assert differences(CONTENT, printed(CONTENT)) == ()


def test_two_labels_swapped() -> None:
    one, two, three = CONTENT.steps[0].ways
    swapped = (one, replace(two, label=three.label), replace(three, label=two.label))
    told = told_of(changed(CONTENT, 1, ways=swapped))
    assert f"step 1: the way “{two.label}” to {two.to} is not found." in told


def test_an_arrow_to_a_wrong_number() -> None:
    one, two, three = CONTENT.steps[0].ways
    told = told_of(changed(CONTENT, 1, ways=(one, replace(two, to=9), three)))
    assert f"step 1: the way “{two.label}” to {two.to} is not found." in told


def test_an_answer_left_out() -> None:
    told = told_of(changed(CONTENT, 6, ways=CONTENT.steps[5].ways[:2]))
    assert "step 6: the way “Answer part C”" in told


def test_a_word_altered_and_a_line_too_many() -> None:
    lines = CONTENT.steps[1].lines
    altered = (replace(lines[0], text="Undo part 0."), *lines[1:])
    assert "step 2: “Surgeon: Do part 0.” is not found." in told_of(
        changed(CONTENT, 2, lines=altered)
    )
    assert "is not of the pathway there" in told_of(changed(CONTENT, 2, lines=(*lines, *altered)))


def test_a_caution_weakened() -> None:
    caution = replace(CONTENT.steps[1].cautions[0], signal="notice")
    assert "step 2: the danger" in told_of(changed(CONTENT, 2, cautions=(caution,)))


def test_a_step_left_out() -> None:
    pages = tuple(
        replace(page, items=tuple(each for each in page.items if not of_step_7(each)))
        for page in PAGES
    )
    found = differences(CONTENT, to_pdf(sheet(pages)))
    assert any(each.startswith("step 7: its number and words: not found") for each in found)
    assert "step 7: its symbol is missing." in placed_differences(CONTENT, pages)


def of_step_7(item: Item) -> bool:
    return f"{getattr(item, 'of', '')}/".startswith("made-up/s7/")


def test_a_wrong_page_number() -> None:
    pages = tuple(mapped(page, wrong_page) for page in PAGES)
    assert "is said to be on page 77" in "\n".join(differences(CONTENT, to_pdf(sheet(pages))))


def wrong_page(item: Item) -> Item:
    if isinstance(item, Text) and item.text.startswith("p.\u00a0"):
        return replace(item, runs=(replace(item.runs[0], text="p.\u00a077"),))
    return item


def mapped(page: Page, change: object) -> Page:
    assert callable(change)
    return replace(page, items=tuple(change(each) for each in page.items))


def exchanged(item: Item) -> Item:
    """Two labels of step 1, each set at the place of the other."""
    swap = {"made-up/s1/a1": "made-up/s1/a2", "made-up/s1/a2": "made-up/s1/a1"}
    if isinstance(item, Text) and item.role is Role.ANSWER and item.of in swap:
        return replace(item, of=swap[item.of])
    return item


def other_number(item: Item) -> Item:
    if isinstance(item, Text) and item.role is Role.NUMBER and item.of == "made-up/s1/a1":
        return replace(item, runs=(replace(item.runs[0], text="11"),))
    return item


def led_astray(item: Item) -> Item:
    if isinstance(item, Arrow) and item.of == "made-up/s1/a1":
        (x, y), (end_x, end_y) = item.points
        return replace(item, points=((x, y + 20), (end_x, end_y + 20)))
    return item


def without_arrow(item: Item) -> Item:
    if isinstance(item, Arrow) and item.of == "made-up/s1/a1":
        return replace(item, of="made-up/s1/a9")
    return item


@pytest.mark.parametrize("plant", [exchanged, other_number, led_astray, without_arrow])
def test_what_is_misplaced_on_the_sheet_is_found_by_geometry(plant: object) -> None:
    assert placed_differences(CONTENT, PAGES) == ()
    found = placed_differences(CONTENT, tuple(mapped(page, plant) for page in PAGES))
    assert any(each.startswith("step 1: the way") for each in found)
