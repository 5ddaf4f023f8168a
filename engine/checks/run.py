"""Running the checks: over one pathway, a file of words, or a whole library."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from datetime import date

from chamberwise.engine.checks.accepting import not_accepted
from chamberwise.engine.checks.evidence import decided_ahead
from chamberwise.engine.checks.registry import (
    EVIDENCE,
    KNOWLEDGE,
    NAMES,
    RULES,
    SHAPE,
    SPEAK_OF_THE_HEAD,
    SPEAK_OF_WHAT_STANDS,
)
from chamberwise.engine.checks.subjects import Subjects
from chamberwise.engine.checks.texts import of_words, texts
from chamberwise.engine.checks.vocabulary import check_words
from chamberwise.engine.checks.wording_of import wording
from chamberwise.engine.diagnostics.problem import Pointer, Problem
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.reading.library import File, Loaded
from chamberwise.engine.translating.checking import check_translation
from chamberwise.engine.translating.segments import Segments


def check_files(
    loaded: Loaded,
    shown: Iterable[str],
    today: date,
    subjects: Subjects | None = None,
    *,
    walking: bool = True,
    of_drills: Mapping[str, Segments] | None = None,
) -> list[Problem]:
    """Return every problem of some files of a library, by file and line.

    `subjects` are those of the library, where more is asked of them than this. Without `walking`
    only what is seen without looking at walks: the rest may still come, and nothing goes.
    `of_drills` are the texts of drills, for translations of them.
    """
    subjects = subjects or Subjects(loaded, today)
    problems: list[Problem] = []
    for name in shown:
        file = loaded.files[name]
        problems += [*file.problems, *check_translation(loaded, file, of_drills)]
        problems += decided_ahead.check(file, today)
        if file.words is not None:
            problems += check_words(loaded, file)
            problems += wording(of_words(file.words), file.tree)
        if file.pathway is not None and loaded.file_of.get(file.pathway.id) == name:
            problems += _check_pathway(subjects, file, walking=walking)
    return sorted(dict.fromkeys(problems), key=_by_place)


def check_for_walk(
    loaded: Loaded, pathway: PathwayId, today: date, subjects: Subjects | None = None
) -> list[Problem]:
    """Return only what makes a walk impossible: errors of form and of names, here and beyond."""
    subjects = subjects or Subjects(loaded, today)
    problems = [*subjects.blocking(pathway), *subjects.beyond(pathway)]
    return sorted(dict.fromkeys(problems), key=_by_place)


def _check_pathway(subjects: Subjects, file: File, *, walking: bool) -> Iterator[Problem]:
    assert file.pathway
    subject = subjects.of(file.pathway.id)
    seen = subject if walking else replace(subject, entries=())
    found: list[Problem] = []
    whole = file.steps_are_whole and all(each.is_whole for each in subjects.loaded.vocabulary)
    for check in (*NAMES, *SHAPE, *KNOWLEDGE, *RULES, *EVIDENCE):
        if check in SPEAK_OF_WHAT_STANDS or (
            file.head_is_whole if check in SPEAK_OF_THE_HEAD else whole
        ):
            found += check(seen) if check in KNOWLEDGE else subjects.found_by(check, subject)
    found += wording(texts(file.pathway), file.tree)
    told = {_unread(each.pointer) for each in file.problems if each.pointer}
    found = [each for each in found if not _is_told(each.pointer, told)]
    yield from not_accepted(seen, found)
    yield from subjects.beyond(file.pathway.id)


def _unread(pointer: Pointer) -> Pointer:
    """Return what a problem of form makes doubtful: the whole step, or just the place."""
    return pointer[:2] if pointer[0] == "steps" else pointer


def _is_told(pointer: Pointer, told: Iterable[Pointer]) -> bool:
    """Whether a place, or one in or around it, could not be read and was reported for that."""
    return any(each[: len(pointer)] == pointer[: len(each)] for each in told)


def _by_place(problem: Problem) -> tuple[str, int, int, str, str]:
    span = problem.span
    line, column = (span.line, span.column) if span else (0, 0)
    return problem.file, line, column, problem.code, problem.message
