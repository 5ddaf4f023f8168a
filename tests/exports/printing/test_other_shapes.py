"""Every kind of sheet of other pathways is lawful, or says plainly why it cannot be."""

from __future__ import annotations

import pytest
from chamberwise.exports.printing.kind import Kind
from chamberwise.exports.printing.kinds import usual
from chamberwise.exports.printing.letters import faults
from chamberwise.exports.printing.printing import (
    Job,
    Laid,
    UnfitSheetsError,
    laid_out,
    ordered,
    sheet_of,
)

from tests.exports.flow.stage import TODAY, assert_lawful
from tests.exports.printing.other_shapes import TWENTY, made
from tests.support.thorough import cases

KINDS = tuple(kind for kind in Kind if kind is not Kind.CASE_TABLE)
LEFT_TO_RIGHT = [(*each, kind) for each in TWENTY if each[2] != "Hebrew" for kind in KINDS]
FEW = [each for each in LEFT_TO_RIGHT if each[1] <= 12]
MORE = [each for each in LEFT_TO_RIGHT if each[1] > 12]


def laid(shape: str, count: int, field: str, kind: Kind) -> Laid:
    job = Job(made(shape, count, field), "other", TODAY)
    (found,) = laid_out(ordered(job, [(kind, usual(kind))]))
    return found


def test_there_are_twenty() -> None:
    assert len(set(TWENTY)) == 20


@pytest.mark.parametrize(("shape", "count", "field", "kind"), cases(FEW, MORE), ids=str)
def test_it_is_lawful_or_says_why_not(shape: str, count: int, field: str, kind: Kind) -> None:
    try:
        found = laid(shape, count, field, kind)
    except UnfitSheetsError as error:
        assert field == "long"
        ((_, why),) = error.found
        assert why.why
        assert why.ways_out
    else:
        assert faults(sheet_of([found])) == ()
        for page in found.pages:
            assert_lawful(page, 8.5)


@pytest.mark.parametrize("kind", KINDS, ids=str)
def test_letters_that_run_right_to_left_are_refused_by_name(kind: Kind) -> None:
    try:
        told = [str(each) for each in faults(sheet_of([laid("comb", 12, "Hebrew", kind)]))]
    except UnfitSheetsError as error:
        told = [each.why for _, each in error.found]
    assert any("right to left" in each for each in told)
