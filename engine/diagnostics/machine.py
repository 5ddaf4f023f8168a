"""Problems as plain values for programs; written out as JSON by the command line."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.diagnostics.problem import Problem, Span, pointer_text


def problem_values(problems: Sequence[Problem]) -> list[dict[str, object]]:
    """Return one mapping a problem, keys in reading order, `at` as authors write it."""
    return [
        {
            "code": problem.code,
            "severity": str(problem.severity),
            "file": problem.file,
            "at": pointer_text(problem.pointer),
            "span": _span(problem.span),
            "message": problem.message,
            "why": problem.why,
            "next": problem.advice,
            "notes": [
                {"message": note.message, "file": note.file, "span": _span(note.span)}
                for note in problem.notes
            ],
        }
        for problem in problems
    ]


def _span(span: Span | None) -> dict[str, int] | None:
    return span._asdict() if span else None
