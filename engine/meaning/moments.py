"""What a walk is made of for a safety rule: its moments, in the order in which they happen.

A question is one moment: what is known is what the team knows once it is answered. Every line of
an action is one moment: what is known is what was known just before it, after the acts before it;
what may change by itself holds until the whole action is done. A handover is one moment. At the
end every line owed is one, and the outcome the last.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from chamberwise.engine.meaning.advance import learnt
from chamberwise.engine.meaning.effects import before_each_line
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.state import Answered, Move, State
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import (
    Action,
    Handover,
    Line,
    Outcome,
    PathwayId,
    Question,
    SignalWord,
    Step,
)
from chamberwise.engine.model.words import ActId, FindingId

WARNING_WORDS = frozenset({SignalWord.DANGER, SignalWord.WARNING})


@dataclass(frozen=True, slots=True)
class Moment:
    """One moment of a walk. `possible` and `last_seen` are bits of the layout, as in a state."""

    place: Place
    possible: int
    last_seen: int
    line: int | None = None
    """Which line of the action or of what is owed, counted from 0."""
    act: ActId | None = None
    by: str | None = None
    warns_of: frozenset[ActId] = frozenset()
    asks: FindingId | None = None
    answer: str | None = None
    hands_over_to: PathwayId | None = None
    is_outcome: bool = False


def moments_of(library: Library, state: State, move: Move) -> tuple[Moment, ...]:
    """Return the moments of one move."""
    step = library.step(state.place)
    if isinstance(step, Question) and isinstance(move, Answered):
        known = learnt(library, state, step, next(a for a in step.answers if a.id == move.answer))
        return (
            Moment(
                state.place,
                known.possible,
                known.last_seen,
                warns_of=warned_of(step),
                asks=step.ask,
                answer=move.answer,
            ),
        )
    if isinstance(step, Action):
        return tuple(_of_action(library, state, step))
    assert isinstance(step, Handover)
    return (
        Moment(
            state.place,
            state.possible,
            state.last_seen,
            warns_of=warned_of(step),
            hands_over_to=step.to,
        ),
    )


def last_moments(library: Library, state: State) -> tuple[Moment, ...]:
    """Return the moments at the end of a walk: what is owed, then the outcome; else none."""
    step = library.step(state.place)
    if not isinstance(step, Outcome):
        return ()
    known = [(state.possible, state.last_seen)] * len(step.owed)
    owed = _of_lines(state.place, step, step.owed, known)
    return (
        *owed,
        Moment(
            state.place,
            state.possible,
            state.last_seen,
            warns_of=warned_of(step),
            is_outcome=True,
        ),
    )


def warned_of(step: Step) -> frozenset[ActId]:
    """Return the acts that a danger or warning of a step guards: the one named, or its own."""
    own = {line.act for line in getattr(step, "lines", ()) if line.act is not None}
    return frozenset(
        act
        for caution in step.cautions
        if caution.signal in WARNING_WORDS
        for act in ((caution.guards,) if caution.guards is not None else own)
    )


def _of_action(library: Library, state: State, step: Action) -> Iterator[Moment]:
    pathway = state.place.pathway
    known = before_each_line(
        step,
        (state.possible, state.last_seen),
        library.words(pathway),
        layout_of(library),
        pathway,
    )
    return _of_lines(state.place, step, step.lines, known)


def _of_lines(
    place: Place, step: Step, lines: Iterable[Line], known: Iterable[tuple[int, int]]
) -> Iterator[Moment]:
    warned = warned_of(step)
    for number, (line, (possible, last_seen)) in enumerate(zip(lines, known, strict=True)):
        yield Moment(
            place, possible, last_seen, line=number, act=line.act, by=line.who, warns_of=warned
        )
