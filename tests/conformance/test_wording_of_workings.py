"""No sentence of a calculation speaks to, or of, a particular patient as an instruction."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from chamberwise.engine.model.words import Mark
from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.registry import NAMES, calculation
from chamberwise.engine.working.run import worked
from chamberwise.engine.working.working import Step

from tests.conformance.working_out import example

ORDERS = re.compile(
    r"(?:^|[.;:] )(?:give|inject|use|administer|implant|put in|start|stop|withhold|choose|avoid)\b|"
    r"\b(?:this|your|the) patient (?:should|must|needs|can)\b|"
    r"\byou (?:should|must)\b|\b(?:is|are) safe\b|\brecommended?\b",
    re.IGNORECASE,
)
"""How an order to give something to somebody begins."""


def told(of: Calculation) -> Iterator[str]:
    working = worked(of, example(of))
    yield from (of.title, of.purpose, *of.limits, *of.cautions, *working.remarks)
    yield from (each.title for each in working.results)
    yield from (cell for table in working.tables for row in table.rows for cell in row)
    yield from (each.text for each in working.lines if isinstance(each, Step))


@pytest.mark.parametrize("name", NAMES)
def test_nothing_is_ordered(name: str) -> None:
    assert [each for each in told(calculation(name)) if ORDERS.search(each)] == []


@pytest.mark.parametrize("name", NAMES)
def test_every_calculation_has_sources_with_marks_and_says_what_it_does_not_know(name: str) -> None:
    of = calculation(name)
    assert of.limits
    assert of.cautions
    assert all(isinstance(each.mark, Mark) for each in of.sources)
    assert of.sources
    assert len({each.name for each in of.inputs}) == len(of.inputs)
    symbols = [each.symbol for each in of.inputs if each.symbol]
    assert len(set(symbols)) == len(symbols)
