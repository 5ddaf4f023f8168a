"""A pathway and all it hands over to, made ready once for every search that goes through it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.exploration.program import Program
from chamberwise.engine.meaning.layout import Field
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import PathwayId, StepId
from chamberwise.engine.proof.rules import comes_back_by
from chamberwise.engine.proof.showing import Scene, scenes
from chamberwise.engine.proof.spots import Spot, Spots, before, rings, spots_of


@dataclass(frozen=True, slots=True)
class Ground:
    """The steps with a door at every bound, where they lead, and in which order to go through."""

    entry: PathwayId
    program: Program
    spots: Spots
    rings: Sequence[Sequence[Spot]]
    before: Mapping[Spot, Sequence[Spot]]
    """From where arrows lead to each spot."""
    scenes: Sequence[Scene]
    counts: Mapping[PathwayId, int]
    """By pathway the bits of its counts, which begin anew when it is handed over to."""
    comes_back: frozenset[StepId]
    """The outcomes of the entry after which the operation goes on elsewhere."""

    def is_end(self, place: Place) -> bool:
        """Whether the operation ends at an outcome."""
        return place.pathway != self.entry or place.step not in self.comes_back

    def first(self) -> int:
        """Return the bits at the entry, which is entered for the first time."""
        counter = self.program.counters.get(self.program.nodes[0].place)
        return self.program.first_bits + (1 << counter.shift if counter else 0)


def ground_of(library: Library, entry: PathwayId, tracked: Iterable[Field]) -> Ground:
    """Return the ground of a pathway whose names are all defined."""
    program = compiled(library, entry, tracked, by_doors=True)
    spots = spots_of(program)
    return Ground(
        entry,
        program,
        spots,
        rings(spots),
        before(spots),
        scenes(program),
        {name: program.counts(name) for name in library.pathways},
        comes_back_by(library, entry),
    )
