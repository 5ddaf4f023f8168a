"""Whether a pathway can be walked at all."""

from __future__ import annotations

from datetime import date

from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.diagnostics.text import problem_text
from chamberwise.engine.reading.library import Loaded


def problems_in_the_way(loaded: Loaded, shown_as: str, today: date | None = None) -> str:
    """Return what stands in the way of walking a file's pathway, as text; nothing where it can."""
    from chamberwise.engine.checks.run import check_for_walk

    file = loaded.files[shown_as]
    if file.pathway is None or file.pathway.id not in loaded.file_of:
        problems = [each for each in file.problems if each.severity is Severity.ERROR]
        if not problems:
            return f"{shown_as} holds no pathway. Name a file that does."
    else:
        problems = check_for_walk(loaded, file.pathway.id, today or date.today())
    if not problems:
        return ""
    told = [problem_text(problem, loaded.texts) for problem in problems]
    return "\n\n".join([*told, f"{shown_as} cannot be walked until this is put right."])
