"""What is read off the finished file is the chart of the pathway, arrow by arrow."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest
from chamberwise.exports.paper.sheet import Arrow, Item, Page, Role, Sheet, Text
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.typesetting.compiling import to_pdf
from chamberwise.exports.wall.content import Row as Content
from chamberwise.exports.wall.content import Side
from chamberwise.exports.wall.extract import wall_chart
from chamberwise.exports.wall.make import make

from tests.exports.flow.stage import FLAGSHIP, TODAY, order, shipped
from tests.exports.wall.reading_back import Row, Way, read_back, squashed

NAMES = tuple(shipped().pathways)
SIZES = (Sized(Paper.A3), Sized(Paper.A2, Turn.LANDSCAPE))


@cache
def pages(name: str, sized: Sized) -> tuple[Page, ...]:
    return make(order(shipped(), name, sized)).pages


def pdf(made: tuple[Page, ...]) -> bytes:
    return to_pdf(Sheet("chart", "chart", "en", TODAY, made))


def expected(name: str) -> dict[int, Row]:
    return {one.number: _row(one) for one in wall_chart(shipped(), name).rows}


def _row(one: Content) -> Row:
    phase = one.phase if one.opens else ""
    row = Row(f"{phase} {one.text}", {_way(side) for side in one.sides})
    if one.down:
        via = f"full {one.down.via}" if one.down.via else ""
        row.down = squashed(one.down.label), via, str(one.number + 1)
    return row


def _way(side: Side) -> Way:
    stop = side.stop
    boxes = [squashed(" ".join(side.done))] if side.done else []
    if side.boxes > len(boxes):
        boxes.append(squashed(f"Ask: {stop.text}" if stop.is_asked else stop.text))
    ends = f"row {stop.row}" if stop.row else f"full {stop.full}" if stop.full else ""
    return Way(squashed(side.label), tuple(boxes), ends)


def assert_same(found: dict[int, Row], wanted: dict[int, Row]) -> None:
    assert sorted(found) == sorted(wanted)
    for number, row in wanted.items():
        assert squashed(found[number].text) == squashed(row.text), number
        assert found[number].ways == row.ways, number
        assert found[number].down == row.down, number


@pytest.mark.parametrize("sized", SIZES, ids=str)
@pytest.mark.parametrize("name", NAMES)
def test_the_graph_read_off_the_file_is_that_of_the_chart(name: str, sized: Sized) -> None:
    assert_same(read_back(pdf(pages(name, sized))), expected(name))


def changed(change: Callable[[list[Item]], None]) -> bytes:
    first, second, *others = pages(FLAGSHIP, SIZES[0])
    items = list(second.items)
    change(items)
    assert items != list(second.items)
    return pdf((first, replace(second, items=tuple(items)), *others))


def swap_labels(items: list[Item]) -> None:
    """Two answers of one row change places."""
    labels = [
        place
        for place, each in enumerate(items)
        if isinstance(each, Text) and each.role is Role.ANSWER and "what-lies" in each.of
    ]
    labels = labels or [
        place for place, each in enumerate(items)
        if isinstance(each, Text) and each.role is Role.ANSWER
    ]  # fmt: skip
    one, other = labels[0], labels[1]
    first, second = items[one], items[other]
    assert isinstance(first, Text)
    assert isinstance(second, Text)
    items[one], items[other] = replace(first, runs=second.runs), replace(second, runs=first.runs)


def misroute(items: list[Item]) -> None:
    """An arrow to the side ends at the box of the way below."""
    heads = [
        place for place, each in enumerate(items)
        if isinstance(each, Arrow) and each.has_head and not each.of
        and each.points[0][1] == each.points[-1][1] and each.points[-1][0] - each.points[0][0] > 3
    ]  # fmt: skip
    one, other = items[heads[1]], items[heads[2]]
    assert isinstance(one, Arrow)
    assert isinstance(other, Arrow)
    items[heads[1]] = replace(one, points=(one.points[0], other.points[-1]))


def renumber(items: list[Item]) -> None:
    """A number at the end of a way is that of another step."""
    numbers = [
        place for place, each in enumerate(items)
        if isinstance(each, Text) and each.role is Role.NUMBER and "/" in each.of
    ]  # fmt: skip
    last = items[numbers[-1]]
    assert isinstance(last, Text)
    items[numbers[-1]] = replace(last, runs=(replace(last.runs[0], text="77"),))


@pytest.mark.parametrize("change", [swap_labels, misroute, renumber])
def test_what_is_planted_is_seen(change: Callable[[list[Item]], None]) -> None:
    with pytest.raises(AssertionError):
        assert_same(read_back(changed(change)), expected(FLAGSHIP))
