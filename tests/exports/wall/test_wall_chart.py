"""The wall chart says what the pathway says, and every page of it can be hung."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

import pytest
from chamberwise.engine.chart.main_line import wall_chart as chart_of
from chamberwise.engine.chart.numbers import step_numbers
from chamberwise.engine.graph.targets import targets
from chamberwise.engine.model.pathway import Pathway
from chamberwise.exports.legibility.angle import read_from
from chamberwise.exports.paper.sheet import Arrow, Outline, Page, Role, Shape, Text, Tier
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.order import UnfitError
from chamberwise.exports.wall.content import Side, Wall
from chamberwise.exports.wall.extract import wall_chart
from chamberwise.exports.wall.make import make
from chamberwise.exports.wall.text import text

from tests.exports.flow.stage import FLAGSHIP, assert_lawful, order, printed, shipped

NAMES = tuple(shipped().pathways)
SIZES = (
    Sized(Paper.A3),
    Sized(Paper.A3, Turn.LANDSCAPE),
    Sized(Paper.A2),
    Sized(Paper.A1, Turn.LANDSCAPE),
)


def own(name: str) -> Pathway:
    return shipped().pathways[name]


@pytest.mark.parametrize("sized", SIZES, ids=str)
@pytest.mark.parametrize("name", NAMES)
def test_every_page_keeps_the_laws(name: str, sized: Sized) -> None:
    for page in make(order(shipped(), name, sized)).pages:
        assert_lawful(page, 8.5)


@pytest.mark.parametrize("name", NAMES)
def test_every_word_of_the_content_is_printed(name: str) -> None:
    content = wall_chart(shipped(), name)
    page = printed(make(order(shipped(), name, Sized(Paper.A3))).pages)
    for said in everything(content):
        assert said in page, said


def everything(content: Wall) -> list[str]:
    said = [content.title, content.use_when]
    for first in content.first:
        said += [first.headline, *first.choices]
        said += [each for task in first.lines for each in (f"{task.who}:", task.text)]
    for row in content.rows:
        said += [row.text, *(side.label for side in row.sides)]
        said += [done for side in row.sides for done in side.done]
        said += [row.down.label] if row.down else []
    return said


@pytest.mark.parametrize("name", NAMES)
def test_every_answer_of_a_row_stands_on_the_chart_once(name: str) -> None:
    for row in wall_chart(shipped(), name).rows:
        step = own(name).steps[row.step]
        arrows = len(list(targets(step)))
        labels = [side.label for side in row.sides] + ([row.down.label] if row.down else [])
        told = sum(len(re.split(r"\bOR\b", label)) for label in labels)
        assert told >= arrows or arrows == 0 or len(set(labels)) == 1


@pytest.mark.parametrize("name", NAMES)
def test_every_way_drawn_is_a_way_of_the_pathway(name: str) -> None:
    """Whatever number an arrow ends at, the steps of the pathway lead there from its row."""
    pathway = own(name)
    numbers = {number: step for step, number in step_numbers(pathway).items()}
    content = wall_chart(shipped(), name)
    rows = {row.number: row.step for row in content.rows}
    for row in content.rows:
        onward = reached(pathway, row.step)
        for side in row.sides:
            assert end_of(side, rows, numbers) in {*onward, None}
        if row.down:
            assert rows[row.number + 1] in onward
            assert row.down.via == 0 or numbers[row.down.via] in onward


def end_of(side: Side, rows: dict[int, str], numbers: dict[int, str]) -> str | None:
    if side.stop.row:
        return rows[side.stop.row]
    return numbers[side.stop.full] if side.stop.full else None


def reached(pathway: Pathway, start: str) -> set[str]:
    met, waiting = set[str](), [start]
    while waiting:
        for target in targets(pathway.steps[waiting.pop()]):
            if target.step not in met:
                met.add(target.step)
                waiting.append(target.step)
    return met


@pytest.mark.parametrize("name", NAMES)
def test_arrows_pass_beside_words(name: str) -> None:
    for page in make(order(shipped(), name, Sized(Paper.A2))).pages:
        for arrow in (each for each in page.items if isinstance(each, Arrow)):
            for start, end in pairwise(arrow.points):
                for words in page.texts:
                    assert passes_beside(start, end, words), (words.text, arrow.points)


def passes_beside(start: tuple[float, float], end: tuple[float, float], words: Text) -> bool:
    (left, right), (top, bottom) = (sorted(each) for each in zip(start, end, strict=True))
    is_beside = right <= words.x + 0.2 or left >= words.x + words.width - 0.2
    return is_beside or bottom <= words.y + 0.2 or top >= words.y + words.height - 0.2


def test_symbols_are_those_of_the_standard() -> None:
    pages = make(order(shipped(), FLAGSHIP, Sized(Paper.A2))).pages
    shapes = [each for page in pages for each in page.items if isinstance(each, Shape)]
    for row in wall_chart(shipped(), FLAGSHIP).rows:
        expected = {
            "decision": Outline.DECISION,
            "action": Outline.PROCESS,
            "another chart": Outline.PREDEFINED_PROCESS,
            "end": Outline.TERMINATOR,
        }[row.sign]
        outlines = [each.outline for each in shapes if each.of == f"{FLAGSHIP}/{row.step}"]
        assert expected in outlines, row


def test_a_distance_too_far_is_refused_with_every_way_out() -> None:
    asked = order(shipped(), FLAGSHIP, Sized(Paper.A2))
    with pytest.raises(UnfitError) as refused:
        make(replace(asked, distance=3.0))
    assert "not from 3\u00a0m" in refused.value.why
    ways_out = " ".join(refused.value.ways_out)
    assert all(word in ways_out for word in ("Larger paper", "Fewer steps", "Shorter words"))


def test_it_reads_aloud_in_order() -> None:
    lines = text(wall_chart(shipped(), FLAGSHIP)).splitlines()
    assert lines[0] == "Posterior capsule rupture"
    first = lines.index("  A. Hold still, tip in")
    then = lines.index("  Row 1. Is the eye soft and the red reflex even?")
    assert first < then < len(lines) - 1
    assert lines[-1] == "Follow local protocol."


def test_a_pathway_without_a_wall_chart_gets_its_likeliest_way() -> None:
    pathway = replace(own("anterior-vitrectomy"), wall_chart=None)
    chart = chart_of(pathway)
    line = (*chart.first, *chart.spine)
    assert line[0] == pathway.start
    for step, following in pairwise(line):
        assert following in {target.step for target in targets(pathway.steps[step])}


@pytest.mark.parametrize("name", NAMES)
def test_what_one_small_sheet_does_not_hold_goes_over_several(name: str) -> None:
    made = make(order(shipped(), name, Sized(Paper.A4)))
    assert 1 < len(made.pages) <= 6
    assert "hang them side by side" in made.told[0]
    for page in made.pages:
        assert_lawful(page, 8.5)
    said = printed(made.pages)
    for each in everything(wall_chart(shipped(), name)):
        assert each in said, each
    assert f"sheet {len(made.pages)} of {len(made.pages)}" in said


def test_several_sheets_are_read_from_where_it_was_asked() -> None:
    asked = order(shipped(), FLAGSHIP, Sized(Paper.A2))
    usual = make(asked).pages
    several = make(replace(asked, distance=1.0)).pages
    assert len(several) > len(usual)
    assert read_from(smallest(several)) >= 1.0
    assert smallest(several) > smallest(usual)


def smallest(pages: Sequence[Page]) -> float:
    """Return the size in points of the smallest words that tell a step or an answer."""
    return min(each.style.size for page in pages for each in page.texts if is_steps(each))


@pytest.mark.parametrize("sized", SIZES, ids=str)
@pytest.mark.parametrize("name", NAMES)
def test_no_sheet_has_more_boxes_than_are_taken_in_at_a_glance(name: str, sized: Sized) -> None:
    for page in make(order(shipped(), name, sized)).pages:
        boxes = [each for each in page.items if isinstance(each, Shape) and each.of]
        kinds = (Outline.DECISION, Outline.PROCESS, Outline.PREDEFINED_PROCESS, Outline.TERMINATOR)
        assert sum(each.outline in kinds for each in boxes) <= 25


def test_first_actions_are_read_across_the_room() -> None:
    """From three metres, at sixteen minutes of arc; on a lying A3 from two."""
    lying = Sized(Paper.A3, Turn.LANDSCAPE)
    for name in (FLAGSHIP, "dropped-nucleus", "anterior-vitrectomy"):
        for sized in (Sized(Paper.A3), lying, Sized(Paper.A2), Sized(Paper.A2, Turn.LANDSCAPE)):
            metres = 2.0 if sized == lying else 3.0
            page, *_ = make(order(shipped(), name, sized)).pages
            sizes = [each.style.size for each in page.texts if each.tier is Tier.GLANCE]
            assert read_from(min(sizes)) >= metres


def test_the_first_sheet_stands_alone() -> None:
    """First actions, whom to call and what is dangerous; none of it needs another sheet."""
    content = wall_chart(shipped(), FLAGSHIP)
    page, *_ = make(order(shipped(), FLAGSHIP, Sized(Paper.A3))).pages
    said = printed((page,))
    assert all(call in said for call in content.calls)
    assert all(note.instead in said for note in content.notes)
    assert not any(row.text in said for row in content.rows)


def is_steps(words: Text) -> bool:
    return words.role in (Role.STEP, Role.QUESTION, Role.ANSWER)


def test_without_first_actions_the_rows_begin_on_the_first_sheet() -> None:
    content = wall_chart(shipped(), "closing-and-after-care")
    assert not content.first
    first, *others = make(order(shipped(), "closing-and-after-care", Sized(Paper.A3))).pages
    assert others
    assert content.rows[0].text in printed([first])
    assert all(note.harm in printed([first]) for note in content.notes)
    assert "Continued on sheet 2" in printed([first])


@pytest.mark.parametrize("sized", [Sized(Paper.A4), Sized(Paper.A3)], ids=str)
def test_a_chart_without_first_actions_is_read_at_arm_s_length(sized: Sized) -> None:
    pages = make(order(shipped(), "closing-and-after-care", sized)).pages
    told = re.findall(r"up to (\d\.\d+)\s", printed(pages))
    assert told
    assert all(float(each) >= 0.5 for each in told)


def test_few_first_actions_leave_no_empty_paper() -> None:
    """Above whom to call no more room is left than between two parts of the sheet."""
    page, *_ = make(order(shipped(), "anterior-vitrectomy", Sized(Paper.A3))).pages
    panels = [each for each in page.items if isinstance(each, Shape) and not each.of]
    panels = [each for each in panels if each.outline is Outline.PANEL and each.weight]
    first, *below = sorted(panels, key=lambda each: each.y)
    assert min(each.y for each in below) - (first.y + first.height) < 20
    tasks = [each for each in page.texts if "Tell the senior surgeon" in each.text]
    assert read_from(tasks[0].style.size) >= 0.9


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("closing-and-after-care", "with lens matter left in the eye: nothing AND lens in the eye"),
        ("closing-and-after-care", "Vitreous stayed behind AND lens in the eye"),
        ("anterior-vitrectomy", "Until then, with nucleus in front of the tear: nothing"),
        (FLAGSHIP, "Cannot tell, with lens in the eye: no lens"),
        (FLAGSHIP, "After 4 rounds: otherwise OR not known"),
    ],
)
def test_a_label_behind_a_silent_fork_names_what_it_speaks_of(name: str, said: str) -> None:
    """Unless the row itself has named it, as in the last."""
    rows = wall_chart(shipped(), name).rows
    labels = [side.label for row in rows for side in row.sides]
    labels += [row.down.label for row in rows if row.down]
    assert any(said in label for label in labels), labels
