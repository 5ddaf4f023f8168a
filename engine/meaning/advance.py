"""The one meaning of a pathway: `advance(library, state, move) -> state`.

The walk, the proof, the drill, the table of cases and the charts' path tables all call it; nothing
else decides what an answer or an action does. Pure and total over legal moves; document order
decides ties; no clock, no randomness, no set iteration.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TypeAlias

from chamberwise.engine.meaning.condition import possibly, surely
from chamberwise.engine.meaning.effects import after_action
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.state import Answered, Done, Move, State, start
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import (
    CANNOT_TELL,
    Action,
    Answer,
    Branch,
    Handover,
    Outcome,
    PathwayId,
    Question,
    Step,
    StepId,
)


@dataclass(frozen=True, slots=True)
class PassedOver:
    """A question was not asked again: its finding is known and fresh."""

    place: Place
    answer: str


@dataclass(frozen=True, slots=True)
class Decided:
    """A branch went on: by a row (counted from 0), by `otherwise`, or because it is not known."""

    place: Place
    by: int | str


@dataclass(frozen=True, slots=True)
class BoundReached:
    """A step was entered as often as it may be; the walk went to its exit instead."""

    place: Place


@dataclass(frozen=True, slots=True)
class CameBack:
    """A handover returned: the outcome over there and the handover it came back to."""

    outcome: Place
    handover: Place


Silent: TypeAlias = PassedOver | Decided | BoundReached | CameBack


@dataclass(frozen=True, slots=True)
class Passage:
    """One move's result, and what was passed silently on the way to it."""

    state: State
    silent: tuple[Silent, ...]


class IllegalMoveError(ValueError):
    """The move is not one of `moves(library, state)`."""

    def __init__(self, move: Move, place: Place) -> None:
        super().__init__(f"{move} at {place}")
        self.move, self.place = move, place


def begin(library: Library, pathway: PathwayId) -> Passage:
    """Return the settled first state of a pathway."""
    state = start(library, pathway)
    silent: list[Silent] = []
    return settle(library, enter(library, state, state.place.step, silent), silent)


def moves(library: Library, state: State) -> tuple[Move, ...]:
    """Return every legal move in document order.

    There is none at an outcome, at an undecided branch, or where the walk goes round in silence.
    """
    step = library.step(state.place)
    if isinstance(step, Question):
        if already_known(library, state, step):
            return ()
        return tuple(Answered(answer.id) for answer in offered(library, state, step))
    return (Done(),) if isinstance(step, Action | Handover) else ()


def offered(library: Library, state: State, question: Question) -> tuple[Answer, ...]:
    """Return the answers that what is known leaves open, "cannot tell" always among them."""
    field = layout_of(library).field(state.place.pathway, question.ask)
    return tuple(
        answer
        for answer in question.answers
        if answer.id == CANNOT_TELL or field.mask(answer.means) & state.possible
    )


def advance(library: Library, state: State, move: Move) -> State:
    """Return the state that a move leads to. Raises `IllegalMoveError`."""
    return passage(library, state, move).state


def passage(library: Library, state: State, move: Move) -> Passage:
    """Return the state that a move leads to and what was passed on the way."""
    if move not in moves(library, state):
        raise IllegalMoveError(move, state.place)
    silent: list[Silent] = []
    return settle(library, _moved(library, state, move, silent), silent)


def _moved(library: Library, state: State, move: Move, silent: list[Silent]) -> State:
    step = library.step(state.place)
    if isinstance(step, Question) and isinstance(move, Answered):
        answer = next(answer for answer in step.answers if answer.id == move.answer)
        return enter(library, learnt(library, state, step, answer), answer.go_to, silent)
    if isinstance(step, Action):
        pathway = state.place.pathway
        possible, last_seen = after_action(
            step,
            (state.possible, state.last_seen),
            library.words(pathway),
            layout_of(library),
            pathway,
        )
        state = replace(state, possible=possible, last_seen=last_seen)
        return enter(library, state, step.go_to, silent)
    assert isinstance(step, Handover)
    return _handed_over(library, state, step, silent)


def learnt(library: Library, state: State, question: Question, answer: Answer) -> State:
    """Return the state with what an answer tells, before it leads anywhere."""
    if answer.id == CANNOT_TELL:
        return state
    field = layout_of(library).field(state.place.pathway, question.ask)
    known = field.mask(answer.means) & state.possible
    return replace(
        state,
        possible=state.possible & ~field.every | known,
        last_seen=state.last_seen & ~field.every,
    )


def _handed_over(library: Library, state: State, step: Handover, silent: list[Silent]) -> State:
    way_back = (*state.way_back, state.place) if step.on_return else ()
    entered = tuple(each for each in state.entered if each[0].pathway != step.to)
    there = Place(step.to, library.pathways[step.to].start)
    state = replace(state, place=there, way_back=way_back, entered=entered)
    return enter(library, state, there.step, silent)


def enter(library: Library, state: State, target: StepId, silent: list[Silent]) -> State:
    """Return the state on a step of the same pathway, or on its exit once its bound is reached."""
    left: set[Place] = set()
    while True:
        place = Place(state.place.pathway, target)
        state = replace(state, place=place)
        bound = library.step(place).bound
        if bound is None or place in left:
            return state
        times = state.times_entered(place)
        if times < bound.at_most:
            others = tuple(each for each in state.entered if each[0] != place)
            return replace(state, entered=tuple(sorted((*others, (place, times + 1)))))
        silent.append(BoundReached(place))
        left.add(place)
        target = bound.after_that


def settle(library: Library, state: State, silent: list[Silent]) -> Passage:
    """Follow what needs no move, up to a step that does, an outcome, or a branch undecided."""
    seen = {state}
    while True:
        onward = _onward(library, state, silent)
        if onward is None or onward in seen:
            return Passage(state if onward is None else onward, tuple(silent))
        seen.add(onward)
        state = onward


def _onward(library: Library, state: State, silent: list[Silent]) -> State | None:
    step = library.step(state.place)
    if isinstance(step, Question):
        known = already_known(library, state, step)
        if known is None:
            return None
        silent.append(PassedOver(state.place, known.id))
        return enter(library, state, known.go_to, silent)
    if isinstance(step, Branch):
        by, target = decide(library, state, step)
        if target is None:
            return None
        silent.append(Decided(state.place, by))
        return enter(library, state, target, silent)
    return _came_back(library, state, step, silent) if isinstance(step, Outcome) else None


def already_known(library: Library, state: State, question: Question) -> Answer | None:
    """Return the one answer that what is known leaves, or `None` when the question is due."""
    field = layout_of(library).field(state.place.pathway, question.ask)
    possible = state.possible & field.every
    if possible == field.every:
        return None
    for answer in question.answers:
        if answer.means and not possible & ~field.mask(answer.means):
            return answer
    return None


def decide(library: Library, state: State, branch: Branch) -> tuple[int | str, StepId | None]:
    """Return by what a branch goes on, and where; no step when what is known does not decide."""
    layout, pathway = layout_of(library), state.place.pathway
    for place, row in enumerate(branch.rows):
        if surely(row.when, state.possible, layout, pathway):
            return place, row.go_to
    if any(possibly(row.when, state.possible, layout, pathway) for row in branch.rows):
        return "not known", branch.not_known
    return "otherwise", branch.otherwise


def _came_back(library: Library, state: State, step: Step, silent: list[Silent]) -> State | None:
    if not state.way_back:
        return None
    handover = state.way_back[-1]
    over_there = library.step(handover)
    assert isinstance(over_there, Handover)
    target = dict(over_there.on_return).get(step.id)
    if target is None:
        return None
    silent.append(CameBack(state.place, handover))
    entered = tuple(each for each in state.entered if each[0].pathway != state.place.pathway)
    state = replace(state, place=handover, way_back=state.way_back[:-1], entered=entered)
    return enter(library, state, target, silent)
