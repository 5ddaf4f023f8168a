"""A mutant: a pathway, or the words it shares, with one edit that a hurried author might make."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.words import Words


@dataclass(frozen=True, slots=True)
class Mutant:
    """One edit. The id begins with the kind and names the place, so that it outlives others."""

    id: str
    kind: str
    description: str
    edited: Pathway | Words
    """The pathway with the edit, or the shared words with it."""

    def within(self, library: Library) -> Library:
        """Return the library that the original stands in, with the edit made."""
        if isinstance(self.edited, Words):
            return Library(self.edited, library.pathways)
        return Library(library.shared, {**library.pathways, self.edited.id: self.edited})


def mutant(kind: str, at: str, description: str, edited: Pathway | Words) -> Mutant:
    """Return a mutant whose id is its kind and its place."""
    return Mutant(f"{kind}/{at}", kind, description, edited)
