"""The rules of one file, and what a check of them may see."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from chamberwise.engine.checks.rules.doings import Doings, doings
from chamberwise.engine.checks.rules.places import Said, happenings
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Pointer, Problem
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.step import Handover, PathwayId
from chamberwise.engine.model.words import Words
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.engine.reading.library import File, Loaded
from chamberwise.engine.reading.tree import Tree


@dataclass(frozen=True)
class Book:
    """The rules of one file."""

    rules: tuple[Rule, ...]
    tree: Tree
    words: Words
    """What they may speak of."""
    library: Library
    pathways: tuple[PathwayId, ...]
    """Where what they speak of may come about."""
    where: str
    """Those pathways in words, as in "no step of ..."."""
    is_read: bool
    """Whether those pathways could be read."""

    @cached_property
    def doings(self) -> Doings:
        """What can come about in the pathways."""
        return doings(self.library, self.pathways, self.words)

    @property
    def shows_all(self) -> bool:
        """Whether something that is not there is missing, and not unread or misspelt."""
        return self.is_read and not self.doings.strange

    def said(self) -> Iterator[tuple[Rule, Said]]:
        """Yield every happening of every rule."""
        for rule in self.rules:
            for said in happenings(rule):
                yield rule, said

    def problem(self, code: Code, at: Pointer, message: str, advice: str) -> Problem:
        """Return a problem of the file."""
        return code.at(self.tree.source(at).file, at, self.tree.span(at), message, advice)


def own_book(subject: Subject) -> Book:
    """Return the rules of a pathway; its walks go on where it hands over to."""
    loaded, pathway = subject.loaded, subject.pathway
    rules = tuple(pathway.words.rules.values())
    reached = reached_by_handover(loaded.library, pathway.id) if rules else ()
    return Book(
        rules,
        subject.tree,
        subject.words,
        loaded.library,
        reached,
        _("this pathway, or of one it hands over to,"),
        all(_goes_on(loaded, name) for name in reached),
    )


def _goes_on(loaded: Loaded, name: PathwayId) -> bool:
    """Whether a pathway could be read, and those that it hands over to are there."""
    pathways = loaded.library.pathways
    onward = (step for step in pathways[name].steps.values() if isinstance(step, Handover))
    return loaded.source(name).steps_are_whole and all(step.to in pathways for step in onward)


def house_book(loaded: Loaded, file: File) -> Book:
    """Return the house rules of a vocabulary file."""
    library = loaded.library
    return Book(
        tuple((file.words or Words()).rules.values()),
        file.tree,
        library.shared,
        library,
        tuple(library.pathways),
        _("any pathway"),
        all(_is_read(each, loaded) for each in loaded.files.values()),
    )


def _is_read(file: File, loaded: Loaded) -> bool:
    if file.is_vocabulary:
        return file.defines_all
    has_its_name = file.pathway is not None and file.pathway.id in loaded.file_of
    return has_its_name and file.steps_are_whole
