"""`list --words`: every shared word with what it is called, house rules among them."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TypeAlias

import pytest
from chamberwise.engine.reading.library import load_library
from chamberwise.tui.command.list import TABLES
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status

LIBRARY = Path(__file__).resolve().parents[2] / "library"
Said: TypeAlias = pytest.CaptureFixture[str]


def listed(capsys: Said, *words: str) -> str:
    assert run(["list", "--library", str(LIBRARY), "--words", *words]) == Status.CLEAN
    return capsys.readouterr().out


def test_every_house_rule_is_listed_with_its_title_its_harm_and_its_marks(capsys: Said) -> None:
    lines = listed(capsys, "rules").splitlines()
    rules = load_library(LIBRARY).library.shared.rules
    assert lines[0].split()[0] == "rules"
    assert [line.split()[0] for line in lines[1:]] == list(rules)
    for line, rule in zip(lines[1:], rules.values(), strict=True):
        assert f"{rule.title} ({rule.severity}; " in line
    assert "(critical; read)" in next(each for each in lines if "filled-first" in each)


def test_rules_come_as_values_too(capsys: Said) -> None:
    found = json.loads(listed(capsys, "rules", "--format", "json"))
    assert found["rules"].keys() == load_library(LIBRARY).library.shared.rules.keys()


def test_without_a_kind_every_kind_is_listed(capsys: Said) -> None:
    found = json.loads(listed(capsys, "--format", "json"))
    assert tuple(found) == TABLES
    shared = load_library(LIBRARY).library.shared
    assert found["acts"] == {name: act.title for name, act in shared.acts.items()}
    assert {*found["findings"], *found["choices"]} == shared.findings.keys()
