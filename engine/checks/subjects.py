"""The subjects of one run of checks, which share what was explored and what keeps from walking."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from functools import cached_property, lru_cache

from chamberwise.engine.checks.knowledge.at_sight import explored_from
from chamberwise.engine.checks.registry import NEEDED_TO_WALK, Check
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.checks.vocabulary import undefined
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.exploration.bare import bare
from chamberwise.engine.exploration.explored import Explored
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.engine.reading.library import Loaded


class Subjects:
    """One library on one day."""

    def __init__(self, loaded: Loaded, today: date) -> None:
        self.loaded = loaded
        self.today = today
        self.explore = lru_cache(maxsize=None)(self._explore)
        self.blocking = lru_cache(maxsize=None)(self._blocking)
        self.of = lru_cache(maxsize=None)(self._of)
        """A pathway as the checks see it."""
        self._found: dict[tuple[PathwayId, Check], list[Problem]] = {}

    def found_by(self, check: Check, subject: Subject) -> list[Problem]:
        """Return what a check finds that looks at no walk; it is asked once."""
        key = subject.pathway.id, check
        if key not in self._found:
            self._found[key] = list(check(subject))
        return self._found[key]

    def _of(self, pathway: PathwayId) -> Subject:
        return Subject(
            self.loaded,
            self.loaded.library.pathways[pathway],
            self.today,
            tuple(self._entries(pathway)),
            self.explore,
        )

    def _explore(self, pathway: PathwayId) -> Explored:
        return explored_from(bare(self.loaded.library), pathway)

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
            problems += self.found_by(check, subject)
        return problems
