"""How the chart is parted over sheets: what reads better, unless letters are clearly smaller."""

from __future__ import annotations

import pytest
from chamberwise.exports.paper.sheet import Outline, Page, Shape
from chamberwise.exports.paper.sizes import Paper, Sized
from chamberwise.exports.wall.extract import wall_chart
from chamberwise.exports.wall.make import make

from tests.exports.flow.stage import FLAGSHIP, order, printed, shipped


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
