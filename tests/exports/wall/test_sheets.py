"""How the chart is parted over sheets: what reads better, unless letters are clearly smaller."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from chamberwise.exports.control.frame import Body, Frame
from chamberwise.exports.paper.sheet import Outline, Page, Shape
from chamberwise.exports.paper.sizes import Paper, Sized
from chamberwise.exports.typesetting.measuring import Ruler
from chamberwise.exports.wall import row_sheets
from chamberwise.exports.wall.content import Note, Sign, Wall
from chamberwise.exports.wall.extract import wall_chart
from chamberwise.exports.wall.make import make
from chamberwise.exports.wall.over_sheets import over_sheets
from chamberwise.exports.wall.pen import Pen
from chamberwise.exports.wall.row_sheets import Plan

from tests.exports.flow.stage import FLAGSHIP, assert_lawful, control, order, printed, shipped
from tests.exports.printing.other_shapes import made
from tests.exports.wall.test_other_shapes import RULER, chart, side


@pytest.mark.parametrize("name", [FLAGSHIP, "dropped-nucleus", "anterior-vitrectomy"])
def test_rows_stand_in_one_column_where_letters_are_as_large(name: str) -> None:
    """Two columns leave a question a word or two on a line."""
    _first, *others = make(order(shipped(), name, Sized(Paper.A3))).pages
    assert others
    assert all(len(columns(page)) == 1 for page in others)


def columns(page: Page) -> set[int]:
    """Return from where, to the centimetre, the questions of a page stand."""
    kinds = (Outline.DECISION,)
    shapes = [each for each in page.items if isinstance(each, Shape) and each.of]
    return {round(each.x / 10) for each in shapes if each.outline in kinds and each.x < 200}


@pytest.mark.parametrize("name", [FLAGSHIP, "dropped-nucleus"])
def test_dangers_that_the_first_sheet_has_no_room_for_stand_on_the_second(name: str) -> None:
    content = wall_chart(shipped(), name)
    first, second, *others = make(order(shipped(), name, Sized(Paper.A4))).pages
    assert content.notes
    assert all(note.instead not in printed([first]) for note in content.notes)
    assert all(note.instead in printed([second]) for note in content.notes)
    assert content.rows[0].text in printed([second])
    assert content.rows[-1].text in printed(others)


@pytest.mark.parametrize("name", shipped().pathways)
def test_every_sheet_but_the_last_says_where_it_goes_on(name: str) -> None:
    pages = make(order(shipped(), name, Sized(Paper.A4))).pages
    for number, page in enumerate(pages, 1):
        said = f"Continued on sheet {number + 1}"
        assert (said in printed([page])) == (number < len(pages))


def test_dangers_have_a_sheet_of_their_own_where_no_row_leaves_them_room() -> None:
    """Many dangers and a first row of many answers: neither is left out, and nothing is refused."""
    said = "Close the valve now, then call the keeper of the yard."
    note = Note("danger", "The valve closes late and the tank runs over into the yard.", said)
    content = chart(5, 8, "plain", 4)
    first = replace(
        content.rows[0],
        sign=Sign.DECISION,
        sides=tuple(side(1, each, 5, "Close the valve") for each in range(7)),
    )
    content = replace(content, notes=(note,) * 9, rows=(first, *content.rows[1:]))
    frame = Frame(RULER, control(shipped(), FLAGSHIP), Sized(Paper.A4).format)
    found = over_sheets(content, frame.body, RULER, 0.0)
    assert found is not None
    pages = [
        frame.page(items, number, len(found.sheets)) for number, items in enumerate(found.sheets, 1)
    ]
    for page in pages:
        assert_lawful(page, 8.5)
    assert [printed([page]).count(said) for page in pages] == [0] * (len(pages) - 1) + [9]


def test_another_parting_is_tried_before_a_further_sheet(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the best does not hold once it is measured."""
    usual = len(make(order(shipped(), FLAGSHIP, Sized(Paper.A3))).pages)
    whole = row_sheets._parted
    refused = set[bool]()

    def parted(content: Wall, body: Body, pen: Pen, plan: Plan) -> object:
        if isinstance(pen.ruler, Ruler) and plan.by_phase and plan.columns == 1:
            refused.add(plan.by_phase)
            return None
        return whole(content, body, pen, plan)

    monkeypatch.setattr(row_sheets, "_parted", parted)
    pages = make(order(shipped(), FLAGSHIP, Sized(Paper.A3))).pages
    assert refused
    assert len(pages) == usual
    for page in pages:
        assert_lawful(page, 8.5)


@pytest.mark.parametrize("count", [24, 60])
def test_rows_too_small_at_arm_s_length_have_a_sheet_more(count: int) -> None:
    """A loop has rows of a line each: two sheets hold them in letters for the hand alone."""
    made_up = made("loop", count, "plain")
    pages = make(order(made_up, "other", Sized(Paper.A3))).pages
    told = re.findall(r"up to (\d\.\d+)\s", printed(pages))
    assert told
    assert all(float(each) >= 0.45 for each in told)
