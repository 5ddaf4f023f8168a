"""What walks show of the steps of a pathway, all of them looked at by `advance`."""

from __future__ import annotations

from collections.abc import Iterator
from functools import reduce
from operator import or_

from chamberwise.engine.meaning.advance import CameBack, Decided, Passage, PassedOver, decide, moves
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import Branch, Question

from tests.support.subjects import entries
from tests.support.walking import everything


class Truth:
    """What every walk that comes through a pathway shows of its steps."""

    def __init__(self, library: Library, pathway: str) -> None:
        self.library, self.name = library, pathway
        self.pathway = library.pathways[pathway]
        self.all = [everything(library, name, 1500) for name in entries(library, pathway)]
        self.possible: dict[str, list[int]] = {}
        self.asked: set[str] = set()
        self.undecided: set[str] = set()
        for found in self.all:
            for made in found.passages:
                self._look(made)

    @property
    def is_whole(self) -> bool:
        return all(found.complete for found in self.all)

    def _look(self, made: Passage) -> None:
        for place in visited(made):
            if place.pathway == self.name:
                self.possible.setdefault(place.step, []).append(made.state.possible)
        place, step = made.state.place, self.library.step(made.state.place)
        if place.pathway == self.name and isinstance(step, Question):
            self.asked |= {place.step} if moves(self.library, made.state) else set()
        if place.pathway == self.name and isinstance(step, Branch):
            goes_round = decide(self.library, made.state, step)[1] is not None
            self.undecided |= set() if goes_round else {place.step}

    def union(self, step: str) -> int:
        """Return the bits that some walk to a step leaves possible."""
        return reduce(or_, self.possible[step])

    def values(self, step: str, finding: str) -> set[str]:
        """Return the values that some walk to a step leaves possible."""
        field = layout_of(self.library).field(self.name, finding)
        return {value for bits in self.possible[step] for value in field.values(bits)}

    def is_ever_known(self, step: str, finding: str) -> bool:
        every = layout_of(self.library).field(self.name, finding).every
        return any(bits & every != every for bits in self.possible[step])


def visited(made: Passage) -> Iterator[Place]:
    """Yield the steps that a passage comes to; what is known does not change on the way."""
    for event in made.silent:
        if isinstance(event, PassedOver | Decided):
            yield event.place
        elif isinstance(event, CameBack):
            yield event.outcome
    yield made.state.place


def truths(library: Library) -> Iterator[Truth]:
    for name in library.pathways:
        truth = Truth(library, name)
        if truth.is_whole:
            yield truth
