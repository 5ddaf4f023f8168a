"""Every hazard of the tool has a control, and every control a test that is there."""

from __future__ import annotations

from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
LOG = ROOT / "protocols" / "notes" / "hazards.md"
SEVERITIES = {"negligible", "minor", "serious", "critical", "catastrophic"}


def rows() -> list[list[str]]:
    lines = [
        line for line in LOG.read_text(encoding="utf-8").splitlines() if line.startswith("| H")
    ]
    return [[cell.strip() for cell in line.strip("|").split("|")] for line in lines]


@pytest.mark.parametrize("row", rows(), ids=lambda row: str(row[0]))
def test_a_hazard_is_told_in_full(row: list[str]) -> None:
    assert len(row) == 9
    assert all(row)
    severity, kind, status = row[4], row[6], row[8]
    assert severity in SEVERITIES
    assert kind in {"D", "P", "I"}
    assert status in {"open", "closed"}
    assert kind != "I" or status == "open", "information alone closes nothing"


@pytest.mark.parametrize("row", rows(), ids=lambda row: str(row[0]))
def test_the_tests_of_its_control_exist(row: list[str]) -> None:
    for name in row[7].split(","):
        path = ROOT / "tests" / name.strip().strip("`")
        assert path.exists(), name
        found = [path] if path.is_file() else [*path.rglob("test_*.py")]
        assert any("def test_" in each.read_text(encoding="utf-8") for each in found), name


def test_hazards_are_numbered_through() -> None:
    assert [row[0] for row in rows()] == [f"H{number:02}" for number in range(1, len(rows()) + 1)]
