"""Lists and shelves to brief, and running the command on them."""

from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

HEADS = "case,eye,biometry eye,AL (mm),K (D),target (D),planned model,planned lens (D),weight (kg)"
ROW = "A,right,right,23.5,43.5,-0.25,bag,21,70"
SHELF = """stock: Test unit
counted: 2026-11-27
reader: circulating practitioner
takes over: second surgeon
stop word: Hold
sulcus: vergence-0.5
lenses:
  bag:
    title: one-piece acrylic lens
    kind: one-piece-acrylic
    a-constant: 118.7
    powers: [{power: 21, count: 1}]
  backup:
    title: three-piece lens
    kind: three-piece
    a-constant: 118.7
    powers: [{power: 20.5, count: 1}, {power: 21, count: 1}]
"""
Seen = pytest.CaptureFixture[str]


def shelf_in(folder: Path) -> str:
    """Write the shelf and return its path."""
    path = folder / "shelf.yaml"
    path.write_text(SHELF, encoding="utf-8")
    return str(path)


def listed(folder: Path, *lines: str, name: str = "list.csv") -> str:
    """Write a list and return its path."""
    path = folder / name
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return str(path)


def refused(words: list[str], capsys: Seen) -> str:
    """Return why a brief is refused; nothing may be shown."""
    assert run(["brief", *words]) == Status.UNUSABLE
    seen = capsys.readouterr()
    assert seen.out == ""
    return seen.err
