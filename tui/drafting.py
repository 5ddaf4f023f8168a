"""A file while it is written in some editor: read again at every save, checked, then proved."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import TypeAlias

from chamberwise.engine.checks.by_form import errors_of_form
from chamberwise.engine.checks.run import check_files
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.reading.library import File, Loaded, assemble, read_file
from chamberwise.tui.examining import Examined, proved
from chamberwise.tui.walkable import problems_in_the_way

Stamps: TypeAlias = Mapping[str, tuple[int, int]]
"""Of each file, when it was written and how long it is; a file that is gone has no entry."""


@dataclass(frozen=True, slots=True)
class Draft:
    """The file being written, in the library it is read in, as it stood at some moment."""

    loaded: Loaded
    shown_as: str
    stamps: Stamps

    @property
    def file(self) -> File:
        """The file being written."""
        return self.loaded.files[self.shown_as]

    @property
    def pathway(self) -> Pathway | None:
        """Its pathway as far as it could be read."""
        pathway = self.file.pathway
        return pathway if pathway is not None and pathway.id in self.loaded.file_of else None


def draft_of(loaded: Loaded, shown_as: str) -> Draft:
    """Return a file as it has just been read."""
    return Draft(loaded, shown_as, stamps(loaded.files))


def stamps(files: Mapping[str, File]) -> Stamps:
    """Return the stamps of files as they lie there now."""
    found = {}
    for name in files:
        try:
            seen = Path(name).stat()
        except OSError:
            continue
        found[name] = (seen.st_mtime_ns, seen.st_size)
    return found


def read_again(draft: Draft, now: Stamps) -> Draft:
    """Return the draft with every file read again that changed, and shared words that are faulty.

    A word defined twice is told in one file for the sake of another.
    """
    files = [
        read_file(Path(name)) if _is_due(draft, file, now) else file
        for name, file in draft.loaded.files.items()
    ]
    return Draft(assemble(files), draft.shown_as, now)


def _is_due(draft: Draft, file: File, now: Stamps) -> bool:
    name = file.shown_as
    changed = draft.stamps.get(name) != now.get(name)
    return changed or (file.is_vocabulary and bool(file.problems))


def seen_at_once(draft: Draft, today: date) -> Examined:
    """Return what is seen without walking anything: form, names, arrows and answers."""
    problems = list(draft.file.problems)
    is_whole = not any(each.severity is Severity.ERROR for each in problems)
    pathway = draft.pathway
    if is_whole and pathway is not None:
        problems += errors_of_form(draft.loaded, pathway.id, today)
    return Examined(_gravest_first(problems))


def checked_whole(draft: Draft, today: date) -> Examined:
    """Return what every check finds, and why there can be no proof, where there can be none."""
    problems = check_files(draft.loaded, [draft.shown_as], today)
    why = problems_in_the_way(draft.loaded, draft.shown_as, today)
    return Examined(_gravest_first(problems), why)


def proved_whole(draft: Draft, today: date, found: Examined) -> Examined:
    """Prove what can be walked; it may take a while."""
    pathway = draft.pathway
    if pathway is None or found.why:
        return found
    return replace(proved(draft.loaded, pathway.id, today, found), problems=found.problems)


def _gravest_first(problems: list[Problem]) -> tuple[Problem, ...]:
    kinds = tuple(Severity)

    def rank(problem: Problem) -> tuple[int, int, int]:
        span = problem.span
        line, column = (span.line, span.column) if span else (0, 0)
        return kinds.index(problem.severity), line, column

    return tuple(sorted(dict.fromkeys(problems), key=rank))
