"""Pathways that say in comments what is wrong with them, and what would put it right.

    #! leads-nowhere: leads to `closed`
    #= go to: close
    go to: closed

`#!` names the check, and a part of its message, for the next line of the file; `#=` is the line to
stand there instead, `#-` says that the line is to go. Read so, the file must be clean.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from chamberwise.engine.checks.run import check_files
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.reading.library import assemble, read_text

from tests.support.build import TODAY

CASES = Path(__file__).resolve().parents[1] / "cases"
_EXPECTED = re.compile(r"^\s*#! ([a-z-]+): (.+)$")
_INSTEAD = re.compile(r"^(\s*)#= (.*)$")
_DELETED = re.compile(r"^\s*#-$")


@dataclass(frozen=True)
class Expected:
    """One problem that a file says it has."""

    line: int
    code: str
    part: str

    def is_met_by(self, problem: Problem) -> bool:
        line = problem.span.line if problem.span else 0
        return (line, problem.code) == (self.line, self.code) and self.part in problem.message


@dataclass(frozen=True)
class CaseFile:
    """A faulty file, what it expects, and its text put right."""

    name: str
    text: str
    expected: tuple[Expected, ...]
    put_right: str


def case_file(path: Path) -> CaseFile:
    text = path.read_text(encoding="utf-8")
    return CaseFile(path.name, text, tuple(expected_in(text)), put_right(text))


def put_right(text: str) -> str:
    return "\n".join(_put_right(text)) + "\n"


def expected_in(text: str) -> Iterator[Expected]:
    waiting: list[tuple[str, str]] = []
    for number, line in enumerate(text.splitlines(), 1):
        said = _EXPECTED.match(line)
        if said:
            waiting.append((said[1], said[2]))
        elif not line.lstrip().startswith("#"):
            yield from (Expected(number, code, part) for code, part in waiting)
            waiting.clear()


def _put_right(text: str) -> Iterator[str]:
    instead: list[str] | None = None
    for line in text.splitlines():
        new = _INSTEAD.match(line)
        if new or _DELETED.match(line):
            instead = (instead or []) + ([new[1] + new[2]] if new else [])
        elif not line.lstrip().startswith("#"):
            yield from [line] if instead is None else instead
            instead = None


def problems_of(case: CaseFile, text: str) -> list[Problem]:
    """Return every problem that `check` finds in a text, read beside the files it may need."""
    beside = sorted((CASES / "beside").glob("*.yaml"))
    files = [read_text(path.read_text(encoding="utf-8"), path.name) for path in beside]
    loaded = assemble([*files, read_text(text, case.name)])
    found = check_files(loaded, [case.name], TODAY)
    return [problem for problem in found if problem.file == case.name]
