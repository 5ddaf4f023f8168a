"""The reader's script: the main line in order, breath by breath, two branches deep."""

from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.engine.chart.numbers import step_numbers
from chamberwise.exports.paper.sheet import Role
from chamberwise.exports.script.content import Mark
from chamberwise.exports.script.extract import script
from chamberwise.exports.script.main_line import main_line
from chamberwise.exports.script.make import make
from chamberwise.exports.script.text import text

from tests.exports.flow.small import small
from tests.exports.flow.stage import order, printed, shipped
from tests.tui.golden import assert_as_kept

HERE = Path(__file__).resolve().parent
NAMES = list(shipped().pathways)


def test_text_of_a_small_script_to_the_letter() -> None:
    assert_as_kept(HERE / "small.txt", text(script(small(), "small")))


@pytest.mark.parametrize("name", NAMES)
def test_steps_are_the_main_line_by_their_numbers_in_the_full_pathway(name: str) -> None:
    own = shipped().pathways[name]
    told = script(shipped(), name).steps
    numbers = step_numbers(own)
    assert [(each.of, each.number) for each in told] == [
        (f"{name}/{step}", numbers[step]) for step in main_line(own)
    ]


@pytest.mark.parametrize("name", NAMES)
def test_every_breath_is_one_line_and_printed(name: str) -> None:
    made = make(order(shipped(), name))
    said = printed(made.pages)
    for page in made.pages:
        for each in page.texts:
            if each.role in (Role.LINE, Role.ANSWER) and each.width < 130 and each.x > 20:
                assert each.height <= 14 * 0.3528 * 1.1, each.text
    for step in script(shipped(), name).steps:
        for line in step.lines:
            assert all(each.replace("\u00a0", " ") in said for each in line.breaths)


@pytest.mark.parametrize("name", NAMES)
def test_no_branch_is_deeper_than_two(name: str) -> None:
    lines = [line for step in script(shipped(), name).steps for line in step.lines]
    assert max(line.deep for line in lines) <= 2


def test_minutes_are_called_out_where_targets_add_up_to_them() -> None:
    lines = [line for step in script(small(), "small").steps for line in step.lines]
    assert [line.breaths for line in lines if line.mark is Mark.CALL_OUT] == [("“1\u00a0minute.”",)]
    untimed = [line for step in script(small(timed=False), "small").steps for line in step.lines]
    assert [line for line in untimed if line.mark is Mark.CALL_OUT] == []
