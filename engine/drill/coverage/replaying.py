"""Every step that a drill comes by, by its answers: those passed over in silence among them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from chamberwise.engine.drill.coverage.guide import Answer
from chamberwise.engine.meaning.advance import CameBack, Passage, begin, moves, passage
from chamberwise.engine.meaning.state import Answered, Done, Move
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import PathwayId


def steps_of(library: Library, pathway: PathwayId, answers: Iterable[Answer]) -> tuple[Place, ...]:
    """Return the steps of the walk that gives these answers, in order."""
    return tuple(_steps(library, pathway, answers))


def _steps(library: Library, pathway: PathwayId, answers: Iterable[Answer]) -> Iterator[Place]:
    given, made = iter(answers), begin(library, pathway)
    yield from _passed(made)
    while offered := moves(library, made.state):
        move: Move = Done()
        if move not in offered:
            move = Answered(next(given)[1])
        made = passage(library, made.state, move)
        yield from _passed(made)


def _passed(made: Passage) -> Iterator[Place]:
    """Yield the steps of one move; where a handover came back its step is not come by anew."""
    yield from (each.place for each in made.silent if not isinstance(each, CameBack))
    yield made.state.place
