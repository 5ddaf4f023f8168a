"""Planted weaknesses come back broken, with a walk that replays; harmless edits do not.

The edits break the numbered requirements of the fact sheet on posterior capsule rupture, one each,
by rerouting, dropping or reordering; they were written without sight of the rules.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from chamberwise.engine.model.library import Library
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.trace import is_lost, trace
from chamberwise.engine.proof.verdict import Violated
from chamberwise.engine.reading.digest import that_reach
from chamberwise.engine.reading.library import assemble, read_file, read_text

TOP = Path(__file__).resolve().parents[2]
EDITS = yaml.safe_load(Path(__file__).with_name("weaknesses.yaml").read_text("utf-8"))
THOROUGH = os.environ.get("CHAMBERWISE_TESTS") == "thorough"
STRIDE = 1 if THOROUGH else 12


def _block(text: str, step: str) -> tuple[int, int]:
    begin = re.compile(rf"^  {re.escape(step)}:\n", re.MULTILINE)
    found = begin.search(text, text.index("\nsteps:\n"))
    assert found, f"no step {step}"
    end = re.compile(r"^(  \S|\S)", re.MULTILINE).search(text, found.end())
    return found.start(), end.start() if end else len(text)


def edited(text: str, edit: dict[str, str]) -> str:
    """Return a pathway's text with one step changed."""
    begin, end = _block(text, edit["step"])
    block = text[begin:end]
    if "replace" in edit:
        assert edit["replace"] in block
        block = block.replace(edit["replace"], edit["by"], 1)
    else:
        block = "".join(_lines(block.splitlines(keepends=True), edit))
    return text[:begin] + block + text[end:]


def _lines(lines: list[str], edit: dict[str, str]) -> list[str]:
    def at(words: str) -> int:
        return next(place for place, line in enumerate(lines) if words in line)

    if "drop line" in edit:
        del lines[at(edit["drop line"])]
    elif "add" in edit:
        lines.insert(at(edit["after line"]) + 1, edit["add"] + "\n")
    else:
        moved = lines.pop(at(edit["move"]))
        place = at(edit["before"]) if "before" in edit else at(edit["after"]) + 1
        lines.insert(place, moved)
    return lines


def library_with(case: dict[str, Any]) -> Library:
    files = []
    for path in sorted(TOP.glob("protocols/vocabulary/*.yaml")):
        files.append(read_file(path))
    for path in sorted(TOP.glob("protocols/*.yaml")):
        text = path.read_text("utf-8")
        if path.stem == case["pathway"]:
            for edit in case["edits"]:
                text = edited(text, edit)
        files.append(read_text(text, path.name))
    return assemble(files).library


def broken(library: Library, pathway: str) -> Iterator[tuple[str, Violated]]:
    for name in (pathway, *that_reach(library, [pathway])):
        for verdict in prove(library, name, stop_at_first=True).verdicts:
            if isinstance(verdict, Violated):
                yield name, verdict


@pytest.mark.parametrize("case", EDITS["harmful"][::STRIDE], ids=lambda case: case["says"])
def test_a_planted_weakness_is_told_with_a_walk(case: dict[str, Any]) -> None:
    library = library_with(case)
    name, verdict = next(broken(library, case["pathway"]))
    walked = trace(library, name, verdict.counterexample.moves)
    assert is_lost(library, name, verdict.rule, walked) == verdict.counterexample.moment


@pytest.mark.parametrize("case", EDITS["harmless"][:: max(1, STRIDE // 3)], ids=lambda c: c["says"])
def test_a_harmless_edit_is_no_violation(case: dict[str, Any]) -> None:
    assert list(broken(library_with(case), case["pathway"])) == []
