"""Whether a pathway can be walked at all."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.diagnostics.text import problem_text
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading.library import Loaded

if TYPE_CHECKING:
    from chamberwise.engine.checks.subjects import Subjects


def problems_in_the_way(
    loaded: Loaded,
    shown_as: str,
    today: date | None = None,
    *,
    to_print: bool = False,
    subjects: Subjects | None = None,
) -> str:
    """Return what stands in the way of walking a file's pathway, as text; nothing where it can."""
    from chamberwise.engine.checks.run import check_for_walk

    file = loaded.files[shown_as]
    if file.pathway is None or file.pathway.id not in loaded.file_of:
        problems = [each for each in file.problems if each.severity is Severity.ERROR]
        if not problems:
            return _("{file} holds no pathway. Name a file that does.").format(file=shown_as)
    else:
        problems = check_for_walk(loaded, file.pathway.id, today or date.today(), subjects)
    if not problems:
        return ""
    told = [problem_text(problem, loaded.texts) for problem in problems]
    return "\n\n".join([*told, not_yet(shown_as, to_print=to_print)])


def not_yet(shown_as: str, *, to_print: bool) -> str:
    """Return the sentence under problems that keep a file's pathway from being used."""
    told = _("{file} cannot be walked until this is put right.")
    if to_print:
        told = _("{file} cannot be printed until this is put right.")
    return told.format(file=shown_as)
