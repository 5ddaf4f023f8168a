"""Running the checks: over one pathway, a file of words, or a whole library."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from functools import cached_property, lru_cache

from chamberwise.engine.checks.accepting import not_accepted
from chamberwise.engine.checks.evidence import decided_ahead
from chamberwise.engine.checks.registry import (
    EVIDENCE,
    KNOWLEDGE,
    NAMES,
    NEEDED_TO_WALK,
    RULES,
    SHAPE,
    SPEAK_OF_THE_HEAD,
    SPEAK_OF_WHAT_STANDS,
)
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.checks.texts import of_words, texts
from chamberwise.engine.checks.vocabulary import check_words, undefined
from chamberwise.engine.checks.wording_of import wording
from chamberwise.engine.diagnostics.problem import Pointer, Problem, Severity
from chamberwise.engine.exploration.explore import explore
from chamberwise.engine.exploration.explored import Explored
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.engine.reading.library import File, Loaded
from chamberwise.engine.translating.checking import check_translation
from chamberwise.engine.translating.segments import Segments


def check_files(
    loaded: Loaded,
    shown: Iterable[str],
    today: date,
    of_drills: Mapping[str, Segments] | None = None,
) -> list[Problem]:
    """Return every problem of some files of a library, by file and line.

    `of_drills` are the texts of drills, for translations of them.
    """
    subjects = _Subjects(loaded, today)
    problems: list[Problem] = []
    for name in shown:
        file = loaded.files[name]
        problems += [*file.problems, *check_translation(loaded, file, of_drills)]
        problems += decided_ahead.check(file, today)
        if file.words is not None:
            problems += check_words(loaded, file)
            problems += wording(of_words(file.words), file.tree)
        if file.pathway is not None and loaded.file_of.get(file.pathway.id) == name:
            problems += _check_pathway(subjects, file)
    return sorted(dict.fromkeys(problems), key=_by_place)


def check_for_walk(loaded: Loaded, pathway: PathwayId, today: date) -> list[Problem]:
    """Return only what makes a walk impossible: errors of form and of names, here and beyond."""
    subjects = _Subjects(loaded, today)
    problems = [*subjects.blocking(pathway), *subjects.beyond(pathway)]
    return sorted(dict.fromkeys(problems), key=_by_place)


def _check_pathway(subjects: _Subjects, file: File) -> Iterator[Problem]:
    assert file.pathway
    subject = subjects.of(file.pathway.id)
    found: list[Problem] = []
    whole = file.steps_are_whole and all(each.is_whole for each in subjects.loaded.vocabulary)
    for check in (*NAMES, *SHAPE, *KNOWLEDGE, *RULES, *EVIDENCE):
        if check in SPEAK_OF_WHAT_STANDS or (
            file.head_is_whole if check in SPEAK_OF_THE_HEAD else whole
        ):
            found += check(subject)
    found += wording(texts(file.pathway), file.tree)
    told = {_unread(each.pointer) for each in file.problems if each.pointer}
    found = [each for each in found if not _is_told(each.pointer, told)]
    yield from not_accepted(subject, found)
    yield from subjects.beyond(file.pathway.id)


def _unread(pointer: Pointer) -> Pointer:
    """Return what a problem of form makes doubtful: the whole step, or just the place."""
    return pointer[:2] if pointer[0] == "steps" else pointer


def _is_told(pointer: Pointer, told: Iterable[Pointer]) -> bool:
    """Whether a place, or one in or around it, could not be read and was reported for that."""
    return any(each[: len(pointer)] == pointer[: len(each)] for each in told)


class _Subjects:
    """The subjects of one run, sharing what was explored."""

    def __init__(self, loaded: Loaded, today: date) -> None:
        self.loaded = loaded
        self.today = today
        self.explore = lru_cache(maxsize=None)(self._explore)
        self.blocking = lru_cache(maxsize=None)(self._blocking)

    def of(self, pathway: PathwayId) -> Subject:
        return Subject(
            self.loaded,
            self.loaded.library.pathways[pathway],
            self.today,
            tuple(self._entries(pathway)),
            self.explore,
        )

    def _explore(self, pathway: PathwayId) -> Explored:
        return explore(self.loaded.library, pathway)

    def beyond(self, pathway: PathwayId) -> Iterator[Problem]:
        """Yield what lies in other files and keeps a pathway from being walked."""
        yield from self.of_words
        yield from self.of_the_sheet()
        for name in reached_by_handover(self.loaded.library, pathway):
            if name != pathway:
                yield from self.blocking(name)

    @cached_property
    def of_words(self) -> list[Problem]:
        """Return the errors of form and of names in the shared words."""
        return [
            problem
            for file in self.loaded.vocabulary
            for problem in (*file.problems, *undefined(self.loaded, file))
            if problem.severity is Severity.ERROR
        ]

    def of_the_sheet(self) -> Iterator[Problem]:
        """Yield the errors of the unit's sheet, if one lies over the library."""
        file = self.loaded.files.get(self.loaded.sheet)
        for problem in file.problems if file else ():
            if problem.severity is Severity.ERROR:
                yield problem

    def _entries(self, pathway: PathwayId) -> Iterator[PathwayId]:
        library = self.loaded.library
        if self.of_words:
            return
        others = [name for name in library.pathways if name != pathway]
        for name in (pathway, *others):
            reached = reached_by_handover(library, name)
            if pathway in reached and not any(self.blocking(each) for each in reached):
                yield name

    def _blocking(self, pathway: PathwayId) -> list[Problem]:
        file = self.loaded.source(pathway)
        own = self.loaded.library.pathways[pathway]
        subject = Subject(self.loaded, own, self.today, (), self.explore)
        problems = [each for each in file.problems if each.severity is Severity.ERROR]
        for check in NEEDED_TO_WALK:
            problems += check(subject)
        return problems


def _by_place(problem: Problem) -> tuple[str, int, int, str, str]:
    span = problem.span
    line, column = (span.line, span.column) if span else (0, 0)
    return problem.file, line, column, problem.code, problem.message
