"""PDF/UA-1 and PDF/A-2a by a validator of its own, where it is installed."""

from __future__ import annotations

from pathlib import Path

import pytest
from pypdf import PdfWriter

from tests.exports.audit.sheets import Case, card, tiled, wall

page = pytest.importorskip("page", reason="the validator is a development extra")


@pytest.mark.parametrize("case", [wall(), card(), tiled()], ids=["wall", "card", "tile"])
@pytest.mark.parametrize("profile", ["PDF_UA_1", "PDF_A_2A"])
def test_the_file_passes(case: Case, profile: str, tmp_path: Path) -> None:
    assert faults(case.pdf, profile, tmp_path) == 0


def test_an_untagged_file_does_not_pass(tmp_path: Path) -> None:
    def untag(writer: PdfWriter) -> None:
        for key in ("/StructTreeRoot", "/MarkInfo", "/Lang"):
            del writer._root_object[key]

    assert faults(wall().edited(untag).pdf, "PDF_UA_1", tmp_path) > 0


def faults(pdf: bytes, profile: str, folder: Path) -> int:
    path = folder / "sheet.pdf"
    path.write_bytes(pdf)
    report = page.validate_pdf(str(path), profile=getattr(page.ValidationProfile, profile))
    return len(report.failures)
