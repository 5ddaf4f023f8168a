"""The validator of PDF/UA-1 and PDF/A-2a, a development extra of its own."""

from __future__ import annotations

import os
from importlib.util import find_spec
from pathlib import Path

import pytest

REQUIRED = os.environ.get("CHAMBERWISE_VALIDATOR") == "required"
HOW = "python -m pip install --editable '.[validator]'"
PROFILES = ("PDF_UA_1", "PDF_A_2A")


def have_validator() -> None:
    """Skip the test where the validator is missing; fail it where it is required."""
    if find_spec("page") is not None:
        return
    if REQUIRED:
        pytest.fail("no validator, and CHAMBERWISE_VALIDATOR=required")
    pytest.skip(f"no validator of PDF/UA and PDF/A; to have it: {HOW}")


def failures(pdf: bytes, profile: str, folder: Path) -> list[str]:
    """Return what the validator finds in a file."""
    import page

    path = folder / "sheet.pdf"
    path.write_bytes(pdf)
    report = page.validate_pdf(str(path), profile=getattr(page.ValidationProfile, profile))
    return [str(each) for each in report.failures]
