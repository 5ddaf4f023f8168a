"""Problems as plain values for programs; written out as JSON by the command line."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict

from chamberwise.engine.diagnostics.problem import Problem, pointer_text


def problem_values(problems: Sequence[Problem]) -> list[dict[str, object]]:
    """Return one mapping a problem, keys in reading order, `at` as authors write it."""
    return [
        {
            "code": problem.code,
            "severity": str(problem.severity),
            "file": problem.file,
            "at": pointer_text(problem.pointer),
            "span": asdict(problem.span) if problem.span else None,
            "message": problem.message,
            "why": problem.why,
            "next": problem.advice,
            "notes": [asdict(note) for note in problem.notes],
        }
        for problem in problems
    ]
