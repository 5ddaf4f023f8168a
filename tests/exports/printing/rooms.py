"""Every kind made by the room of the tests."""

from __future__ import annotations

import sys
from types import ModuleType

import pytest
from chamberwise.exports.audit.report import Report
from chamberwise.exports.printing import auditing, kinds
from chamberwise.exports.printing.order import Kind

from tests.exports.printing import room


def use_test_rooms(monkeypatch: pytest.MonkeyPatch, *, audited: bool = False) -> None:
    """Let every kind be made by the room of the tests, which the audit would not let pass."""
    if not audited:
        monkeypatch.setattr(auditing, "audit", lambda *_, **__: Report("", (), (), ()))
    monkeypatch.setitem(sys.modules, "test_room", ModuleType("test_room"))
    for name in ("make", "extract", "text"):
        monkeypatch.setitem(sys.modules, f"test_room.{name}", room)
    monkeypatch.setattr(kinds, "ROOMS", dict.fromkeys(Kind, kinds.Room("test_room", "words_of")))
