"""Pages of the full pathway, for pathways of every size and on every paper: laws of the page."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import pytest
from chamberwise.exports.control.frame import MARGIN
from chamberwise.exports.full.content import ON, Choice, Kind, Step, Way
from chamberwise.exports.full.folding import ALL_ALONE, phases
from chamberwise.exports.full.make import NO_MAP, make_from
from chamberwise.exports.full.map import LEGEND, TITLE
from chamberwise.exports.full.placed import placed_differences
from chamberwise.exports.full.round_trip import differences
from chamberwise.exports.paper.sheet import Arrow, Page, Role, Shape, Text
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.order import UnfitError
from chamberwise.exports.typesetting.compiling import to_pdf

from tests.exports.full.made_up import A4, EVERY_PAPER, changed, made_up, order, sheet
from tests.support.thorough import cases

CLEAR = 0.05


def overlapping(page: Page) -> list[tuple[str, str]]:
    boxes = [
        (each.text, each.x, each.y, each.x + each.width, each.y + each.height)
        for each in page.texts
    ]
    return [
        (one[0], other[0])
        for one, other in combinations(boxes, 2)
        if one[1] + CLEAR < other[3]
        and other[1] + CLEAR < one[3]
        and one[2] + CLEAR < other[4]
        and other[2] + CLEAR < one[4]
    ]


def crossed(page: Page) -> list[str]:
    """Texts that a straight piece of an arrow goes through."""
    found = []
    for arrow in (each for each in page.items if isinstance(each, Arrow) and each.of != "map"):
        (x, y), (end_x, end_y) = arrow.points[0], arrow.points[-1]
        left, right, top, bottom = min(x, end_x), max(x, end_x), min(y, end_y), max(y, end_y)
        found += [
            text.text
            for text in page.texts
            if (
                text.x + CLEAR < right
                and left + CLEAR < text.x + text.width
                and text.y + CLEAR < bottom
                and top + CLEAR < text.y + text.height
            )
            or (x == end_x and text.x < x < text.x + text.width and top < text.y < bottom)
            or (y == end_y and text.y < y < text.y + text.height and left < text.x < right)
        ]
    return found


def outside(page: Page) -> list[object]:
    width, height = page.format
    return [
        each
        for each in page.items
        if isinstance(each, Text | Shape)
        and not (
            each.x >= MARGIN - CLEAR
            and each.y >= MARGIN - CLEAR
            and each.x + each.width <= width - MARGIN + CLEAR
            and each.y + each.height <= height - MARGIN + CLEAR
        )
    ]


def check(pages: tuple[Page, ...]) -> None:
    for page in pages:
        assert overlapping(page) == []
        assert crossed(page) == []
        assert outside(page) == []


@pytest.mark.parametrize("sized", EVERY_PAPER, ids=str)
def test_on_every_paper_all_is_there_and_nothing_meets(sized: Sized) -> None:
    content = made_up(17, fan=5)
    pages = make_from(content, order(sized)).pages
    check(pages)
    assert placed_differences(content, pages) == ()
    assert differences(content, to_pdf(sheet(pages))) == ()


@pytest.mark.parametrize("count", cases([2, 5, 60, 61], [120, 300]))
def test_pathways_of_every_size(count: int) -> None:
    content = made_up(count)
    pages = make_from(content, order()).pages
    check(pages)
    assert placed_differences(content, pages) == ()
    assert differences(content, to_pdf(sheet(pages))) == ()


@pytest.mark.parametrize("word", ["κάψουλα", "капсула", "Kapselspannringimplantation"])
def test_other_alphabets_and_long_words(word: str) -> None:
    content = made_up(8, word=word)
    pages = make_from(content, order()).pages
    check(pages)
    assert placed_differences(content, pages) == ()
    assert differences(content, to_pdf(sheet(pages))) == ()


def test_a_step_longer_than_a_page_goes_on_between_its_lines() -> None:
    content = made_up(5, lines=90)
    pages = make_from(content, order()).pages
    check(pages)
    assert any(text.text == "(continued)" for page in pages for text in page.texts)
    assert differences(content, to_pdf(sheet(pages))) == ()


def test_no_other_step_is_split() -> None:
    pages = make_from(made_up(60), order()).pages
    assert not any(text.text == "(continued)" for page in pages for text in page.texts)


def test_type_grows_with_the_distance() -> None:
    near, far = (make_from(made_up(5), order(Sized(Paper.A2), each)).pages for each in (None, 1.0))
    size = [max(t.style.size for p in pages for t in p.texts) for pages in (near, far)]
    assert size[1] > 2 * size[0]
    check(far)


def test_a_word_wider_than_its_column_is_named() -> None:
    with pytest.raises(UnfitError) as told:
        make_from(made_up(3, word="x" * 200), order())
    assert "xxx" in told.value.why
    assert "Larger paper." in told.value.ways_out


def test_a_script_from_right_to_left_is_refused_by_letter_and_place() -> None:
    with pytest.raises(UnfitError) as told:
        make_from(made_up(3, word="محفظة"), order())
    assert "right to left" in told.value.why
    assert "The title" in told.value.why


def test_the_same_content_makes_the_same_pages() -> None:
    content = made_up(20)
    assert make_from(content, order()).pages == make_from(content, order()).pages


def test_more_columns_on_larger_paper() -> None:
    content = made_up(60)
    counts = [
        len(make_from(content, order(each)).pages) for each in (A4, Sized(Paper.A1, Turn.LANDSCAPE))
    ]
    assert counts[1] * 2 < counts[0]


def test_type_too_large_for_the_paper_is_refused_with_the_ways_out() -> None:
    with pytest.raises(UnfitError) as told:
        make_from(made_up(5), order(A4, 2.0))
    assert "2.0\u00a0m" in told.value.why
    assert "Larger paper: A3 or more." in told.value.ways_out


def on_map(pages: tuple[Page, ...]) -> list[str]:
    return [text.text for page in pages for text in page.texts if text.of == "map"]


def test_without_a_map_it_is_said_so() -> None:
    content = made_up(200)
    ways = tuple(Way(f"a{each}", f"Answer {each}", each) for each in range(2, 200))
    made = make_from(changed(content, 1, ways=ways), order())
    assert made.told == (NO_MAP,)
    assert on_map(made.pages) == []


def test_a_short_pathway_has_its_map_on_the_first_page() -> None:
    made = make_from(made_up(5), order())
    told = on_map(made.pages[:1])
    assert told[0] == TITLE
    assert told[-1] == LEGEND
    assert {"Start", "1", "2", "3", "4", "5"} <= set(told)


@pytest.mark.parametrize("count", [5, 60, 61])
def test_every_step_is_on_the_map(count: int) -> None:
    content = made_up(count)
    shown: set[int] = set()
    for text in on_map(make_from(content, order()).pages):
        first, _, last = text.partition(" to ")
        if first.isdigit():
            shown |= set(range(int(first), int(last or first) + 1))
    assert shown >= set(range(1, count + 1))


def test_plain_runs_of_actions_share_a_symbol_of_a_long_pathway() -> None:
    content = made_up(ALL_ALONE + 1)
    steps = list(content.steps)
    for number in (20, 21, 22):
        way = (Way(ON, "Go on", number + 1),)
        steps[number - 1] = replace(steps[number - 1], kind=Kind.ACTION, ways=way)
    steps = [without(step, {21, 22}) if step.number < 20 else step for step in steps]
    names = [
        each.name
        for phase in phases(replace(content, steps=tuple(steps)))
        for each in phase.symbols
    ]
    assert "20 to 22" in names
    assert "21" not in names


def without(step: Step, targets: set[int]) -> Step:
    return replace(step, ways=tuple(way for way in step.ways if way.to not in targets))


def test_the_same_caution_is_told_in_full_once_a_page() -> None:
    pages = make_from(made_up(30), order()).pages
    for page in pages[1:]:
        told = [text.text for text in page.texts if text.role is Role.CAUTION]
        assert sum(text.startswith("A harm is done.") for text in told) <= 1
    told = [text.text for page in pages for text in page.texts if text.role is Role.CAUTION]
    assert any(text.startswith("Instead: ") and "see step" in text for text in told)


def test_a_choice_that_is_not_set_stands_once_in_the_list_at_the_end() -> None:
    choice = Choice("Which ring", False, ("One", "Two"), 1)
    content = changed(changed(made_up(6), 2, choices=(choice,)), 4, choices=(choice,))
    pages = make_from(content, order()).pages
    texts = [text.text for page in pages for text in page.texts]
    assert sum("Which ring: NOT SET LOCALLY: One; or Two." in each for each in texts) == 1
    assert sum("Choice\u00a01: Which ring: NOT SET LOCALLY." in each for each in texts) == 2
    assert differences(content, to_pdf(sheet(pages))) == ()
