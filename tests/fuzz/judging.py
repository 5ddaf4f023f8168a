"""What must hold of any file whatever, in a library with any files beside it."""

from __future__ import annotations

import json
from datetime import date
from random import Random

from chamberwise.engine.checks.run import check_files, check_for_walk
from chamberwise.engine.diagnostics.machine import problem_values
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.diagnostics.text import problem_text
from chamberwise.engine.meaning.advance import begin, moves, passage
from chamberwise.engine.reading.characters import first_hidden
from chamberwise.engine.reading.library import File, Loaded, assemble, read_text
from chamberwise.engine.reading.source_text import decode

TODAY = date(2026, 11, 25)
LONGEST_WALK = 40


def read_bytes(data: bytes, shown_as: str) -> File:
    """Read what a file holds as `read_file` does."""
    text, problems = decode(data, shown_as)
    return read_text(text, shown_as, problems)


def judge(files: list[File], shown: str, random: Random) -> list[Problem]:
    """Check one file among others and walk it if it may be walked. Raises where something falls."""
    loaded = assemble(files)
    problems = check_files(loaded, [shown], TODAY)
    _can_be_told(loaded, problems)
    for name in list(loaded.library.pathways):
        if loaded.file_of[name] == shown and not check_for_walk(loaded, name, TODAY):
            _can_be_walked(loaded, name, random)
    assert problems or loaded.files[shown].tree.root is not None
    return problems


def _can_be_told(loaded: Loaded, problems: list[Problem]) -> None:
    for problem in problems:
        assert problem.message
        assert problem.why
        assert problem.advice
        assert first_hidden(problem_text(problem, loaded.texts)) is None, problem
        text = loaded.files[problem.file].text
        line = problem.span.line if problem.span else 1
        assert line <= len(text.splitlines()) + 1 or not text, problem
    json.dumps(problem_values(problems))


def _can_be_walked(loaded: Loaded, name: str, random: Random) -> None:
    state = begin(loaded.library, name).state
    for _ in range(LONGEST_WALK):
        possible = moves(loaded.library, state)
        if not possible:
            return
        state = passage(loaded.library, state, random.choice(possible)).state
