"""Blocks that flow: nothing is lost, nothing overlaps, quantities hold."""

from __future__ import annotations

import pytest
from chamberwise.exports.control.card_foot import card_foot
from chamberwise.exports.flow.block import Area, Block, Group, plain
from chamberwise.exports.flow.filling import fill
from chamberwise.exports.flow.holding import held
from chamberwise.exports.flow.laying import lay
from chamberwise.exports.flow.tabling import row, shares
from chamberwise.exports.paper.sheet import Arrow, Style, Text
from chamberwise.exports.printing.order import UnfitError
from chamberwise.exports.typesetting.measuring import Ruler
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.exports.flow.stage import FLAGSHIP, approved, control, order, shipped

RULER = Ruler()
BODY = Style(10)
AREAS = [Area(place * 70.0, 10.0, 60.0, 40.0) for place in range(60)]
texts = st.text("abc def", min_size=1, max_size=60).map(lambda each: f"x{each.strip()}")


def groups(said: list[str], keeps: list[bool]) -> list[Group]:
    pairs = zip(said, keeps, strict=False)
    return [Group((Block(plain(each), BODY),), 1.0, keep) for each, keep in pairs]


@settings(max_examples=30, deadline=None)
@given(st.lists(texts, min_size=1, max_size=30), st.lists(st.booleans(), min_size=30, max_size=30))
def test_all_is_placed_once_in_order_and_inside(said: list[str], keeps: list[bool]) -> None:
    filled = fill(lay(RULER, groups(said, keeps), 60.0, 40.0), AREAS)
    found = [item for items in filled for item in items]
    assert [item.text for item in found if isinstance(item, Text)] == said
    for area, items in zip(AREAS, filled, strict=False):
        for item in items:
            assert isinstance(item, Text)
            assert item.x == area.x
            assert item.y + item.height <= area.y + area.height + 0.01


def test_what_keeps_the_next_goes_with_it() -> None:
    said = ["a"] * 7 + ["head", "below"]
    loose = lay(RULER, groups(said, [False] * 9), 60.0, 40.0)
    kept = lay(RULER, groups(said, [False] * 7 + [True, False]), 60.0, 40.0)
    assert [len(each) for each in fill(loose, AREAS)] == [8, 1]
    assert [len(each) for each in fill(kept, AREAS)] == [7, 2]


def test_a_word_wider_than_its_column_is_told_with_a_way_out() -> None:
    with pytest.raises(UnfitError, match="wider than its column") as told:
        lay(RULER, groups(["7" * 60], [False]), 60.0, 40.0)
    assert told.value.ways_out


def test_a_block_higher_than_its_column_is_told_and_a_group_is_broken() -> None:
    with pytest.raises(UnfitError, match="higher than its column"):
        lay(RULER, groups(["word " * 90], [False]), 60.0, 40.0)
    blocks = tuple(Block(plain(f"line {number}"), BODY) for number in range(20))
    laid = lay(RULER, [Group(blocks)], 60.0, 40.0)
    assert len(laid) == 2
    assert all(each.height <= 40 for each in laid)


def test_where_no_room_is_left_behind_words_the_line_to_write_on_is_below() -> None:
    short = lay(RULER, [Group((Block(plain("Help"), BODY, to_write=True),))], 60, 40)
    long = lay(RULER, [Group((Block(plain("Help " * 8), BODY, to_write=True),))], 60, 40)
    (line,) = (item for item in short[0].items if isinstance(item, Arrow))
    assert line.points[0][0] > 9
    (line,) = (item for item in long[0].items if isinstance(item, Arrow))
    assert line.points[0][0] == 0
    assert long[0].height > short[0].height + 6


@pytest.mark.parametrize(
    ("said", "kept"),
    [
        ("Give 10 mg per mL now", "Give 10\u00a0mg\u00a0per\u00a0mL now"),
        ("2 % in 30 s", "2\u00a0% in 30\u00a0s"),
        ("steps 98, 104 and 2 more", "steps 98, 104 and 2 more"),
    ],
)
def test_quantities_hold(said: str, kept: str) -> None:
    assert held(said) == kept


def test_cells_of_a_row_stand_side_by_side_as_high_as_the_highest() -> None:
    cells = [(Block(plain("one two three four five six"), BODY),), (Block(plain("a"), BODY),), ()]
    widths = shares(90.0, (1, 1, 1))
    laid = row(RULER, cells, widths, 100.0)
    long, short = (item for item in laid.items if isinstance(item, Text))
    assert laid.height > long.height > short.height
    assert short.x >= 30
    with pytest.raises(UnfitError):
        row(RULER, cells, widths, 6.0)


def test_the_foot_of_a_card_says_marks_rule_edition_and_stamp() -> None:
    narrow = card_foot(RULER, control(shipped(), FLAGSHIP), 10, 100, 60)
    (text,) = (item for item in narrow.items if isinstance(item, Text))
    assert text.y + text.height == pytest.approx(100)
    said = "Follow local protocol. Edition 0.1. Stamp 7QK2-M4XP-3. Review by 25 May 2027."
    assert _spaced(text) == f"DRAFT. TEMPLATE. {said}"
    signed = card_foot(RULER, approved(order(shipped(), FLAGSHIP)).control, 10, 100, 130)
    (text,) = (item for item in signed.items if isinstance(item, Text))
    assert _spaced(text) == said
    assert signed.height < narrow.height


def _spaced(text: Text) -> str:
    """Return a text with spaces for all that keeps words together or parts lines."""
    return text.text.replace("\u00a0", " ").replace("\n", " ")
