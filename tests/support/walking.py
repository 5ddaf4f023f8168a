"""Walking a library by random picks, and looking at all of it by `advance` alone."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from chamberwise.engine.meaning.advance import Passage, begin, moves, passage
from chamberwise.engine.meaning.state import Answered, Done, Move, State
from chamberwise.engine.model.library import Library

DONE = "done"


@dataclass(frozen=True)
class Leg:
    """One move of a random walk: the state it was made in and what it led to."""

    before: State
    move: Move
    made: Passage


def random_walk(library: Library, pathway: str, picks: Iterable[int]) -> Iterator[Leg]:
    """Yield the legs of a walk until the picks, or the moves, run out."""
    state = begin(library, pathway).state
    for pick in picks:
        offered = moves(library, state)
        if not offered:
            return
        move = offered[pick % len(offered)]
        made = passage(library, state, move)
        yield Leg(state, move, made)
        state = made.state


def passages(library: Library, pathway: str, picks: Iterable[int]) -> Iterator[Passage]:
    """Yield the first passage of a walk, then that of every move."""
    yield begin(library, pathway)
    for leg in random_walk(library, pathway, picks):
        yield leg.made


def move_name(move: Move) -> str:
    return move.answer if isinstance(move, Answered) else DONE


def named_move(name: str) -> Move:
    return Done() if name == DONE else Answered(name)


@dataclass
class Everything:
    """Every settled state of a pathway, found by `advance` and nothing else."""

    passages: list[Passage] = field(default_factory=list)
    onward: dict[State, list[State]] = field(default_factory=dict)
    complete: bool = True


def everything(library: Library, pathway: str, most: int = 4000) -> Everything:
    """Return all that a walk can come to; `complete` is false where that is more than `most`."""
    found = Everything([begin(library, pathway)])
    waiting = [found.passages[0].state]
    while waiting:
        state = waiting.pop()
        if state in found.onward:
            continue
        if len(found.onward) >= most:
            found.complete = False
            break
        found.onward[state] = []
        for move in moves(library, state):
            made = passage(library, state, move)
            found.passages.append(made)
            found.onward[state].append(made.state)
            waiting.append(made.state)
    return found
