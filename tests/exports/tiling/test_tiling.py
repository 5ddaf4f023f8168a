"""A page cut into tiles: everything is on some tile, at its place, and every tile says which."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pypdf
import pytest
from chamberwise.engine.reading.library import load_library
from chamberwise.exports.control.extract import control_of
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.moving import moved
from chamberwise.exports.paper.sheet import (
    Arrow,
    Code,
    Item,
    Outline,
    Page,
    Role,
    Run,
    Shape,
    Sheet,
    Style,
    Text,
)
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.stamp.modules import modules
from chamberwise.exports.tiling.extents import box
from chamberwise.exports.tiling.grid import MARGIN
from chamberwise.exports.tiling.tiling import Tiled, tiled
from chamberwise.exports.typesetting.compiling import to_pdf
from chamberwise.exports.typesetting.measuring import Ruler, Setting
from hypothesis import given
from hypothesis import strategies as st

LIBRARY = load_library(Path(__file__).parents[2] / "library").library
TODAY = date(2026, 11, 25)
STAMP = "7QK2-M4XP-3"
CONTROL = control_of(LIBRARY.pathways["shallow-chamber"], "wall chart", TODAY, STAMP)
RULER = Ruler()


def word(x: float, y: float, text: str) -> Text:
    return Text(x, y, 60, 8, (Run(text),), Style(14), Role.LINE)


def cut_up(*items: Item, paper: Paper = Paper.A2, turn: Turn = Turn.PORTRAIT) -> Tiled:
    return tiled(Page(Sized(paper, turn).format, items), CONTROL, RULER)


def words(page: Page) -> set[str]:
    return {text.text for text in page.texts}


places = st.lists(st.tuples(st.integers(12, 340), st.integers(12, 570)), max_size=12, unique=True)


@given(places)
def test_every_item_is_on_each_tile_whose_window_it_meets_and_on_no_other(
    at: list[tuple[int, int]],
) -> None:
    items = [word(x, y, f"{x}/{y}") for x, y in at]
    found = cut_up(*items)
    for (_, window), tile in zip(found.grid.windows, found.tiles, strict=True):
        for item in items:
            assert (item.text in words(tile)) == box(item).meets(window)
            if item.text in words(tile):
                shown = next(text for text in tile.texts if text.text == item.text)
                assert shown.x - item.x == pytest.approx(MARGIN - window.left)
                assert shown.y - item.y == pytest.approx(MARGIN - window.top)
    whole = {text.text for tile in found.tiles for text in tile.texts}
    assert {item.text for item in items} <= whole


def test_a_text_in_the_way_of_the_middle_is_whole_on_one_tile() -> None:
    text = word(180, 290, "in the middle")
    found = cut_up(text)
    letters = RULER(Setting(text.runs, text.style, text.width)).width
    assert any(
        window.left <= text.x and text.x + letters <= window.right
        for _, window in found.grid.windows
    )
    assert any(
        window.top <= text.y and text.y + text.height <= window.bottom
        for _, window in found.grid.windows
    )


@pytest.mark.parametrize("turn", list(Turn))
@pytest.mark.parametrize("paper", [Paper.A3, Paper.A2, Paper.A1])
def test_tiles_are_a4_and_labelled_by_row_and_column(paper: Paper, turn: Turn) -> None:
    found = cut_up(word(20, 20, "x"), paper=paper, turn=turn)
    rows, columns = len(found.grid.rows), len(found.grid.columns)
    assert len(found.tiles) == rows * columns == found.grid.count
    assert {sorted(tile.format) == [210, 297] for tile in found.tiles} == {True}
    told = [tile.texts[-1].text for tile in found.tiles]
    labels = [f"{row}.{column}" for row in range(1, rows + 1) for column in range(1, columns + 1)]
    assert told == [
        f"Tile {label} of {found.grid.count}: {CONTROL.title}, wall chart, stamp {STAMP}"
        for label in labels
    ]
    assert set(labels) <= words(found.assembly)


@pytest.mark.parametrize("paper", [Paper.A3, Paper.A1])
def test_every_tile_says_by_itself_what_it_is_and_how_to_use_it(paper: Paper) -> None:
    """Whole, on one line, above the window: no cut goes through it and nothing covers it."""
    found = cut_up(word(30, 30, "some"), paper=paper)
    for (label, _), tile in zip(found.grid.windows, found.tiles, strict=True):
        told = f"Tile {label} of {found.grid.count}. Follow local protocol."
        (own,) = (each for each in tile.texts if each.text == told)
        assert own.y >= 5
        assert own.y + own.height <= MARGIN
        assert own.height < 5


def test_nothing_is_printed_beyond_the_window_but_marks_and_the_label() -> None:
    found = cut_up(Shape(Outline.PROCESS, 12, 12, 396, 570), word(20, 20, "x"))
    for tile in found.tiles:
        masks = [
            item
            for item in tile.items
            if isinstance(item, Shape) and item.ground is Ink.WHITE and item.border is Ink.CLEAR
        ]
        assert len(masks) == 4
        first = tile.items.index(masks[0])
        after = tile.items[first:]
        assert all(isinstance(each, Shape | Arrow | Text) for each in after)
        across = sum(mask.width * mask.height for mask in masks)
        width, height = tile.format
        window = next(
            w for (_, w), t in zip(found.grid.windows, found.tiles, strict=True) if t is tile
        )
        shown = (window.right - window.left) * (window.bottom - window.top)
        assert across + shown == pytest.approx(width * height)


def test_marks_and_label_stay_on_the_paper() -> None:
    found = cut_up(word(20, 20, "x"), paper=Paper.A1)
    for tile in found.tiles:
        around = [box(item) for item in tile.items if isinstance(item, Arrow)]
        around.append(box(tile.texts[-1]))
        assert all(each.left >= 4 and each.top >= 4 for each in around)
        assert all(each.right <= tile.format.width - 4 for each in around)
        assert all(each.bottom <= tile.format.height - 4 for each in around)


@given(st.floats(-50, 50), st.floats(-50, 50))
def test_moving_moves_the_room_of_an_item(right: float, down: float) -> None:
    items: list[Item] = [
        word(5, 6, "x"),
        Shape(Outline.DECISION, 1, 2, 3, 4),
        Arrow(((1, 2), (3, 9), (5, 4))),
        Code(3, 4, 20, ("10", "01"), "told"),
    ]
    for item in items:
        before, after = box(item), box(moved(item, right, down))
        steps = (after.left - before.left, after.right - before.right)
        assert steps == pytest.approx((right, right))
        assert (after.top - before.top, after.bottom - before.bottom) == pytest.approx((down, down))


@pytest.mark.parametrize("turned", [90.0, 270.0])
def test_a_turned_text_takes_its_height_across(turned: float) -> None:
    text = Text(100, 100, 60, 8, (Run("x"),), Style(14), Role.MARK, turned=turned)
    around = box(text)
    assert (around.right - around.left, around.bottom - around.top) == pytest.approx((8, 60))
    assert (around.left + around.right) / 2 == pytest.approx(130)


def test_the_pdf_has_a_page_for_each_tile_and_the_plan_first(tmp_path: Path) -> None:
    code = Code(360, 550, 24, modules(STAMP), f"Stamp {STAMP}")
    found = cut_up(word(20, 20, "first words"), word(300, 500, "last words"), code)
    sheet = Sheet("Tiles", "subject", "en", TODAY, found.pages)
    path = tmp_path / "tiles.pdf"
    path.write_bytes(to_pdf(sheet))
    pages = [page.extract_text() for page in pypdf.PdfReader(path).pages]
    assert len(pages) == found.grid.count + 1
    assert "putting the tiles together" in " ".join(pages[0].split())
    assert "first words" in pages[1]
    assert "last words" in pages[-1]
    assert "last words" not in pages[1]
