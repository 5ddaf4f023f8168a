"""What `check` says of a file with many faults, to the letter.

CHAMBERWISE_KEEP=1 writes the files anew; look at the difference before keeping it.
"""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest
from chamberwise.tui.command.main import run

HERE = Path(__file__).resolve().parent
ASKED = ["check", "--library", ".", "--on", "2026-11-25", "./many-faults.yaml"]


def said(capsys: pytest.CaptureFixture[str], *more: str) -> str:
    assert run([*ASKED, *more]) == 1
    captured = capsys.readouterr()
    assert captured.err == ""
    return captured.out


def compare(name: str, text: str) -> None:
    path = HERE / name
    if os.environ.get("CHAMBERWISE_KEEP"):
        path.write_text(text, encoding="utf-8")
    assert text == path.read_text(encoding="utf-8")


def test_as_text(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(HERE)
    compare("many-faults.txt", said(capsys))


def test_as_json(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(HERE)
    text = said(capsys, "--format", "json")
    compare("many-faults.json", text)
    problems = json.loads(text)
    assert {tuple(problem) for problem in problems} == {
        ("code", "severity", "file", "at", "span", "message", "why", "next", "notes")
    }


def test_text_and_json_tell_the_same(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(HERE)
    text = said(capsys)
    for problem in json.loads(said(capsys, "--format", "json")):
        span = problem["span"]
        place = f"{problem['file']}:{span['line']}:{span['column']}"
        head = f"{place}: {problem['severity']}: {problem['message']} [{problem['code']}]"
        assert head in text.splitlines()
        assert f"    next: {problem['next']}" in text.splitlines()
