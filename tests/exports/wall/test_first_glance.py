"""What is found first on a wall chart, and which way a chart goes whose author names none."""

from __future__ import annotations

import pytest
from chamberwise.engine.chart.main_line import likeliest
from chamberwise.exports.paper.sheet import Role, Tier
from chamberwise.exports.paper.sizes import Paper, Sized
from chamberwise.exports.wall.extract import wall_chart
from chamberwise.exports.wall.make import make

from tests.exports.flow.stage import FLAGSHIP, order, shipped
from tests.exports.printing.other_shapes import made
from tests.exports.wall.test_wall_chart import SIZES


@pytest.mark.parametrize("sized", SIZES, ids=str)
def test_the_first_actions_are_the_largest_words(sized: Sized) -> None:
    """Larger than the title too: what is done first is found before what the chart is called."""
    page, *_ = make(order(shipped(), FLAGSHIP, sized)).pages
    first = [each for each in page.texts if each.tier is Tier.GLANCE and each.role is Role.STEP]
    others = [each for each in page.texts if each.tier is not Tier.GLANCE]
    assert [each.text for each in first] == [
        one.headline for one in wall_chart(shipped(), FLAGSHIP).first
    ]
    assert min(each.style.size for each in first) > 1.2 * max(each.style.size for each in others)


def test_names_stand_before_their_tasks_in_a_column() -> None:
    """Whoever looks for a duty's own line finds it down one edge."""
    page, *_ = make(order(shipped(), FLAGSHIP, Sized(Paper.A3))).pages
    content = wall_chart(shipped(), FLAGSHIP)
    names = {f"{task.who}:" for one in content.first for task in one.lines}
    tasks = {task.text for one in content.first for task in one.lines}
    named = [each for each in page.texts if each.text in names]
    told = [each for each in page.texts if each.text in tasks]
    assert len(named) == len(told) == sum(len(one.lines) for one in content.first)
    assert len({each.x for each in named}) == len({each.x for each in told}) == 1


def test_the_likeliest_way_goes_on_while_it_can() -> None:
    """All walks come to an end, which for that alone is not the next row."""
    for shape, count in (("fan", 8), ("comb", 9), ("loop", 6)):
        pathway = made(shape, count, "plain").pathways["other"]
        line = likeliest(pathway)
        assert len(line) > 2, shape
        assert line[-1] == "end"
        assert "end" not in line[:-1]
