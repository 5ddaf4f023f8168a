"""Charts of other shapes and fields print lawfully, or are refused in so many words."""

from __future__ import annotations

from itertools import product

import pytest
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.typesetting.measuring import Ruler
from chamberwise.exports.wall.content import Down, First, Note, Row, Side, Sign, Stop, Task, Wall
from chamberwise.exports.wall.placing import place

from tests.exports.flow.stage import FLAGSHIP, assert_lawful, control, shipped
from tests.support.thorough import cases

RULER = Ruler()
WORDS = {
    "plain": "Close the valve",
    "long": "Electroencephalographically inconspicuous counterirritation",
    "Greek": "Κλείστε τη βαλβίδα αμέσως",
    "Cyrillic": "Закройте клапан немедленно",
    "short": "Go",
}
SHAPES = ((2, 2, 0), (5, 5, 1), (9, 3, 4), (14, 2, 3), (20, 4, 2))
A3, A1 = Sized(Paper.A3), Sized(Paper.A1, Turn.LANDSCAPE)
EVERY = [*product(WORDS, SHAPES, (A3, A1))]
FEW = [each for each in EVERY if each[0] == "plain" or each[1:] == (SHAPES[2], A3)]
TRIED = cases(FEW, (each for each in EVERY if each not in FEW))


def chart(rows: int, fan: int, words: str, firsts: int) -> Wall:
    said = WORDS[words]
    return Wall(
        "made-up",
        said,
        f"{said} fails.",
        tuple(First(f"f{n}", said, (Task("Surgeon", f"{said} now."),) * 3) for n in range(firsts)),
        tuple(row(number, rows, fan, said) for number in range(1, rows + 1)),
        Down("", 7) if firsts else None,
        (said,),
        (Note("danger", f"{said} too late.", f"{said} now."),) * 2,
        3,
        120,
    )


def row(number: int, rows: int, fan: int, said: str) -> Row:
    signs = (Sign.DECISION, Sign.ACTION, Sign.DECISION, Sign.CHART)
    sign = Sign.END if number == rows else signs[number % 4]
    is_open = sign in (Sign.DECISION, Sign.CHART)
    sides = tuple(side(number, each, rows, said) for each in range(fan - 1)) if is_open else ()
    down = None if number == rows else Down("Yes" if is_open else "", number * 3 if fan > 3 else 0)
    return Row(number, f"s{number}", sign, f"{said}?", "Phase", sides, down)


def side(number: int, each: int, rows: int, said: str) -> Side:
    stops = (
        Stop(None, "", row=min(rows, number + 2)),
        Stop(Sign.CHART, f"{said} chart", full=number),
        Stop(Sign.END, said),
        Stop(Sign.DECISION, f"{said}?", full=100 + number),
    )
    done = (said,) * (each % 3)
    return Side(f"{said} {each}", done, stops[each % 4], f"made-up/s{number}/{each}")


@pytest.mark.parametrize(("words", "shape", "sized"), TRIED, ids=str)
def test_it_prints_lawfully_or_does_not_fit(
    words: str, shape: tuple[int, int, int], sized: Sized
) -> None:
    rows, fan, firsts = shape
    frame = Frame(RULER, control(shipped(), FLAGSHIP), sized.format)
    placed = place(chart(rows, fan, words, firsts), frame.body, RULER)
    if placed is None:
        assert rows * fan >= 40 or words == "long"
    else:
        assert_lawful(frame.page(placed.items, 1, 1), 8.5)


def test_larger_paper_gives_larger_letters() -> None:
    content = chart(9, 3, "plain", 4)
    sizes = []
    for paper in Paper:
        frame = Frame(RULER, control(shipped(), FLAGSHIP), Sized(paper).format)
        placed = place(content, frame.body, RULER)
        sizes.append(placed.size if placed else 0.0)
    assert sizes == sorted(sizes)
    assert sizes[-1] > sizes[0]
