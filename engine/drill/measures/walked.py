"""Which answers of the pathway a run came by: where it looked when the pathway asks."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeAlias

from chamberwise.engine.drill.aligning.align import Aligned
from chamberwise.engine.drill.aligning.alignment import Kind
from chamberwise.engine.drill.entries import Looked
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import CANNOT_TELL, Question

Answer: TypeAlias = tuple[Place, str]


def walked(library: Library, of: Aligned) -> tuple[Answer, ...]:
    """Return the answers, each once, in the order of the run."""
    return tuple(dict.fromkeys(_walked(library, of)))


def _walked(library: Library, of: Aligned) -> Iterator[Answer]:
    for move in of.alignment.moves:
        if move.kind is not Kind.SYNCHRONOUS or move.doing is None or move.event is None:
            continue
        step, entry = library.step(move.doing.place), of.events[move.event].entry
        if isinstance(step, Question) and isinstance(entry, Looked):
            told = (each.id for each in step.answers if entry.saw in each.means)
            yield move.doing.place, next(told, CANNOT_TELL)
