"""The small library below the sheets of these tests, and sheets that say what is wrong with them.

A line `#! slug: part of the message` speaks of the line of the sheet that follows it.
"""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

from chamberwise.engine.checks.run import check_files
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.local.blaming import Below, blamed
from chamberwise.engine.local.localising import localised
from chamberwise.engine.reading.library import File, Loaded, load_library, read_file, read_text

from tests.support.build import TODAY

HERE = Path(__file__).parent
BELOW = HERE / "library"
SHEETS = sorted((HERE / "sheets").glob("*.yaml"))
PATHWAY = "leaking-wound"
_SAID = re.compile(r"^\s*#! ([a-z-]+): (.+)$")


@cache
def below() -> Loaded:
    return load_library(BELOW)


def sheet(name: str) -> File:
    return read_file(HERE / "sheets" / f"{name}.yaml")


def edited(name: str, *edits: tuple[str, str]) -> File:
    """Return a sheet with some of its text replaced."""
    text = sheet(name).text
    for old, new in edits:
        assert old in text
        text = text.replace(old, new)
    return read_text(text, f"{name}.yaml")


def problems(file: File) -> list[Problem]:
    """Return every problem that `check` tells of a sheet."""
    loaded = localised(below(), file)
    shown = (file.shown_as, loaded.file_of[PATHWAY])
    return blamed(check_files(loaded, shown, TODAY), file, Below(below(), tuple(shown[1:]), TODAY))


def said(text: str) -> list[tuple[int, str, str]]:
    """Return what a sheet says is wrong with it: line, slug and a part of the message."""
    found, waiting = [], []
    for number, line in enumerate(text.splitlines(), 1):
        if match := _SAID.match(line):
            waiting.append(match.groups())
        else:
            found += [(number, *each) for each in waiting]
            waiting = []
    return found
