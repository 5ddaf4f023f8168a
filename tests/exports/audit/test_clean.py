"""Sheets without a fault: nothing is found, and nearly every rule had something to measure."""

from __future__ import annotations

from dataclasses import replace

import pytest
from chamberwise.exports.audit.audit import audit
from chamberwise.exports.audit.rule import Severity
from chamberwise.exports.audit.terms import Terms
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.order import Kind
from chamberwise.exports.typesetting.measuring import Ruler

from tests.exports.audit.sheets import CONTROL, Case, card, tiled, wall

SPECIAL = {"LEG-05", "LEG-08", "FLO-07", "PRT-04"}
"""What a plain wall chart gives no occasion for; the planted faults have cases of their own."""
ONLY_WHEN_IT_HAPPENS = {"DOC-05", "DOC-10"}


def test_a_clean_chart_has_no_finding_but_on_its_signal_inks_in_coloured_light() -> None:
    case = wall()
    found = audit(case.sheet, case.pdf, case.terms).found
    assert {each.rule for each in found} == {"COL-13"}


def test_a_clean_chart_lets_nearly_every_rule_measure() -> None:
    case = wall()
    judged = audit(case.sheet, case.pdf, case.terms).judged
    assert {each.rule for each in judged if not each.worst} == SPECIAL | ONLY_WHEN_IT_HAPPENS


def test_clean_cards_and_tiles_have_no_error() -> None:
    for case in (card(), tiled()):
        assert audit(case.sheet, case.pdf, case.terms).errors == ()


@pytest.mark.parametrize("kind", list(Kind))
@pytest.mark.parametrize("paper", list(Paper))
@pytest.mark.parametrize("turn", list(Turn))
def test_the_frame_alone_is_clean_on_every_paper(kind: Kind, paper: Paper, turn: Turn) -> None:
    sized = Sized(paper, turn)
    page = Frame(Ruler(), CONTROL, sized.format).page((), 1, 1)
    case = Case(replace(wall().sheet, pages=(page,)), Terms(kind, sized, CONTROL))
    found = audit(case.sheet, case.pdf, case.terms).found
    errors = {each.rule for each in found if each.severity is Severity.ERROR}
    assert errors == set()
