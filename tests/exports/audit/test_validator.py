"""PDF/UA-1 and PDF/A-2a by a validator of its own, where it is installed.

In CI it has to be: CHAMBERWISE_VALIDATOR=required.
"""

from __future__ import annotations

from datetime import date
from functools import cache
from pathlib import Path

import pytest
from chamberwise.engine.reading.library import load_library
from chamberwise.exports.printing.kind import Kind
from chamberwise.exports.printing.kinds import usual
from chamberwise.exports.printing.printing import Form, Job, laid_out, ordered, printed, sheet_of
from pypdf import PdfWriter

from tests.exports.audit.sheets import Case, card, tiled, wall
from tests.exports.audit.validator import PROFILES, failures, have_validator

FROZEN = Path(__file__).parents[1] / "printing" / "frozen"
PROTOCOLS = Path(__file__).parents[3] / "protocols"
ORDERS = {
    "pack": (FROZEN, "dim-lamp", tuple(Kind)),
    "wall chart": (PROTOCOLS, "posterior-capsule-rupture", (Kind.WALL_CHART,)),
}


@pytest.fixture(autouse=True)
def _validator() -> None:
    have_validator()


@pytest.mark.parametrize("case", [wall(), card(), tiled()], ids=["wall", "card", "tile"])
@pytest.mark.parametrize("profile", PROFILES)
def test_the_file_passes(case: Case, profile: str, tmp_path: Path) -> None:
    assert failures(case.pdf, profile, tmp_path) == []


@cache
def ordered_file(name: str) -> bytes:
    folder, pathway, kinds = ORDERS[name]
    job = Job(load_library(folder).library, pathway, date(2026, 11, 25))
    laid = laid_out(ordered(job, [(kind, usual(kind)) for kind in kinds]))
    return printed(sheet_of(laid), Form.PDF)[0]


@pytest.mark.parametrize("name", ORDERS)
@pytest.mark.parametrize("profile", PROFILES)
def test_what_is_ordered_passes(name: str, profile: str, tmp_path: Path) -> None:
    assert failures(ordered_file(name), profile, tmp_path) == []


def test_an_untagged_file_does_not_pass(tmp_path: Path) -> None:
    def untag(writer: PdfWriter) -> None:
        for key in ("/StructTreeRoot", "/MarkInfo", "/Lang"):
            del writer._root_object[key]

    assert failures(wall().edited(untag).pdf, "PDF_UA_1", tmp_path) != []
