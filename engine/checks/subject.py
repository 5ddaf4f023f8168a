"""What a check may see: one pathway in its library, the file it came from, and today's date."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from typing import TYPE_CHECKING

from chamberwise.engine.checks.knowledge.at_sight import doubtful, sightings
from chamberwise.engine.checks.references import Reference, references
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Note, Pointer, Problem
from chamberwise.engine.exploration.bare import bare
from chamberwise.engine.exploration.explored import Explored
from chamberwise.engine.meaning.layout import Field, layout_of
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import Words
from chamberwise.engine.proof.sighting import Sighted, exits_end
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.reading.tree import Tree

if TYPE_CHECKING:
    import networkx as nx
    from chamberwise.engine.checks.rules.book import Book


@dataclass(frozen=True)
class Subject:
    """One pathway to be checked."""

    loaded: Loaded
    pathway: Pathway
    today: date
    entries: tuple[PathwayId, ...]
    """The pathways whose walks come through here and can be explored, its own first."""
    explore: Callable[[PathwayId], Explored]

    @property
    def library(self) -> Library:
        """The library it stands in."""
        return self.loaded.library

    @property
    def walked(self) -> Library:
        """The library as walks go by it: what is found of it stands for every other wording."""
        return bare(self.library)

    @property
    def _as_walked(self) -> Pathway:
        return self.walked.pathways[self.pathway.id]

    @cached_property
    def words(self) -> Words:
        """Every word it may use."""
        return self.pathway.words.over(self.library.shared)

    @cached_property
    def references(self) -> tuple[Reference, ...]:
        """Every name it uses."""
        return tuple(references(self.pathway))

    @cached_property
    def book(self) -> Book:
        """The safety rules of its own."""
        from chamberwise.engine.checks.rules.book import own_book

        return own_book(self)

    @property
    def tree(self) -> Tree:
        """The located tree of its file."""
        return self.loaded.source(self.pathway.id).tree

    @cached_property
    def graph(self) -> nx.MultiDiGraph[str]:
        """Its step graph; targets that do not exist have no edge."""
        from chamberwise.engine.graph.view import step_graph

        return step_graph(self.pathway)

    @cached_property
    def by_arrows(self) -> frozenset[str]:
        """The steps that arrows from the entry lead to, the entry among them."""
        import networkx as nx

        start = self.pathway.start
        if start not in self.graph:
            return frozenset()
        return frozenset((start, *nx.descendants(self.graph, start)))

    @cached_property
    def written_steps(self) -> frozenset[str]:
        """Every step name in the file, those that could not be read among them."""
        return self.loaded.source(self.pathway.id).written_steps

    @cached_property
    def sightings(self) -> tuple[Explored | Sighted, ...]:
        """What walks show from its own entry, then from pathways that hand over to it.

        As much as settles what the checks ask. None where names are missing: then nothing can be
        walked, and other checks say why.
        """
        if not self._can_be_seen:
            return self.explorations
        return sightings(self.walked, self._as_walked, self.entries, self.by_arrows, self._doubtful)

    @cached_property
    def explorations(self) -> tuple[Explored, ...]:
        """Every state from those entries, with the way to each.

        None where it was seen that no walk comes to a stop at a branch.
        """
        if self._can_be_seen and not any(
            seen.undecided
            for found in (self.sightings if self._doubtful else ())
            for _, seen in found.seen_in(self.pathway.id)
        ):
            return ()
        return tuple(self.explore(name) for name in self.entries)

    @cached_property
    def _doubtful(self) -> frozenset[Place]:
        return doubtful(self.walked, self._as_walked, self.entries)

    @property
    def _can_be_seen(self) -> bool:
        """Whether a sweep goes the walks there are and no others."""
        return bool(self.entries) and exits_end(self.walked)

    @cached_property
    def definitions_are_whole(self) -> bool:
        """Whether every word that it may use could be read; otherwise one may only seem missing."""
        own = self.loaded.source(self.pathway.id)
        return all(file.defines_all for file in (own, *self.loaded.vocabulary))

    def field(self, finding: str) -> Field:
        """Return the bits of a finding as this pathway names it."""
        return layout_of(self.library).field(self.pathway.id, finding)

    def problem(
        self,
        code: Code,
        at: Pointer,
        message: str,
        advice: str,
        *,
        at_key: bool = False,
        notes: Sequence[Note] = (),
    ) -> Problem:
        """Return a problem of this pathway's file, at a key or at its value."""
        span = self.tree.span(at, at_key=at_key)
        return code.at(self.tree.source(at).file, at, span, message, advice, notes)

    def note(self, message: str, at: Pointer) -> Note:
        """Return a second place in this file that explains a problem."""
        return Note(message, self.tree.source(at).file, self.tree.span(at, at_key=True))
