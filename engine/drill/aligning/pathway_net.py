"""A pathway as a model to lay a run against: every move of it is one of `advance`.

The acts of a step may come in any order that no rule forbids. A look that was left out is taken to
show what was true at that moment, so the model goes where the pathway would have gone in this eye.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from chamberwise.engine.drill.aligning.alignment import Onward
from chamberwise.engine.drill.aligning.within import Pairs, must_come_before
from chamberwise.engine.drill.entries import Did, Looked
from chamberwise.engine.drill.run import Event
from chamberwise.engine.meaning.advance import advance, begin, moves, offered
from chamberwise.engine.meaning.layout import layout_of
from chamberwise.engine.meaning.state import Answered, Done, State
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import (
    CANNOT_TELL,
    Action,
    Handover,
    Line,
    Outcome,
    PathwayId,
    Question,
)
from chamberwise.engine.model.words import ActId, FindingId, ValueId

Spot: TypeAlias = tuple[int, int]
"""The number of a state, and the bits of the acts of its step that are done or past."""


@dataclass(frozen=True, slots=True)
class Doing:
    """What the pathway has somebody do: an act by its line, or a look by its question."""

    place: Place
    act: ActId | None = None
    line: int | None = None
    looks_at: FindingId | None = None


@dataclass(frozen=True, slots=True)
class _Acts:
    """The lines of a step that are acts, and what may no longer follow each."""

    doings: tuple[Doing, ...]
    past: tuple[int, ...]


class PathwayNet:
    """A pathway and a run of it. With a free end the model may end wherever the run does."""

    def __init__(
        self,
        library: Library,
        pathway: PathwayId,
        events: Sequence[Event],
        pairs: Pairs,
        is_free: bool,
        first: State | None = None,
    ) -> None:
        self._library = library
        self._pairs = pairs
        self._events = events
        self._is_free = is_free
        self._numbers: dict[State, int] = {}
        self._states: list[State] = []
        self._after: dict[tuple[int, str | None], int] = {}
        self._acts: dict[Place, _Acts] = {}
        self.first: Spot = (self._number(first or begin(library, pathway).state), 0)

    def may_end(self, node: Spot) -> bool:
        """Whether the model may end here: at an outcome, or wherever the end is free."""
        return self._is_free or not moves(self._library, self._states[node[0]])

    def onward(self, node: Spot, event: int) -> Iterator[Onward[Spot, Doing]]:
        """Return the ways on: as the event says, by leaving something out, or in silence."""
        number, done = node
        state = self._states[number]
        step = self._library.step(state.place)
        at = self._events[event].entry if event < len(self._events) else None
        if isinstance(step, Question):
            yield from self._asked(number, state, step, event)
        elif isinstance(step, Action | Outcome):
            yield from self._acted(number, done, state.place, at)
        elif isinstance(step, Handover):
            yield Onward((self._moved(number, None), 0))

    def still_to_come(self, node: Spot) -> Iterator[Doing]:
        """Yield what the pathway would have had done from here, if this eye stayed as it is."""
        met: set[Spot] = set()
        while node not in met:
            met.add(node)
            ways = list(self.onward(node, len(self._events)))
            if ways:
                yield from ways[-1].left_out
                node = ways[-1].to

    def _asked(
        self, number: int, state: State, step: Question, event: int
    ) -> Iterator[Onward[Spot, Doing]]:
        doing = Doing(state.place, looks_at=step.ask)
        at = self._events[event].entry if event < len(self._events) else None
        if isinstance(at, Looked) and at.finding == step.ask:
            answer = self._answer(state, step, at.saw)
            if answer is not None:
                yield Onward((self._moved(number, answer), 0), taken=doing)
        here = self._events[min(event, len(self._events) - 1)] if self._events else None
        known = self._known(state, step, here) if here else None
        answer = known or self._answer(state, step, here.truth.get(step.ask) if here else None)
        if answer is not None:
            left_out = () if known else (doing,)
            yield Onward((self._moved(number, answer), 0), left_out)

    def _acted(
        self, number: int, done: int, place: Place, at: Did | Looked | None
    ) -> Iterator[Onward[Spot, Doing]]:
        acts = self._acts_of(place)
        left = [bit for bit in range(len(acts.doings)) if not done >> bit & 1]
        for bit in left:
            if isinstance(at, Did) and acts.doings[bit].act == at.act:
                past = acts.past[bit] & ~done
                missed = tuple(acts.doings[each] for each in left if past >> each & 1)
                yield Onward((number, done | past | 1 << bit), missed, acts.doings[bit])
                break
        if not isinstance(self._library.step(place), Outcome):
            yield Onward((self._moved(number, None), 0), tuple(acts.doings[bit] for bit in left))

    def _known(self, state: State, step: Question, here: Event) -> str | None:
        """Return the answer that the team already knew, if it did: no look is left out then."""
        field = layout_of(self._library).field(state.place.pathway, step.ask)
        known = here.possible & field.every
        if known == field.every:
            return None
        answers = offered(self._library, state, step)
        told = (each.id for each in answers if each.means and not known & ~field.mask(each.means))
        return next(told, None)

    def _answer(self, state: State, step: Question, value: ValueId | None) -> str | None:
        """Return the answer that tells a value, else that it cannot be told; None for neither."""
        answers = offered(self._library, state, step)
        told = next((answer.id for answer in answers if value in answer.means), None)
        unclear = next((answer.id for answer in answers if answer.id == CANNOT_TELL), None)
        return told or unclear

    def _moved(self, number: int, answer: str | None) -> int:
        found = self._after.get((number, answer))
        if found is None:
            move = Done() if answer is None else Answered(answer)
            after = advance(self._library, self._states[number], move)
            found = self._after[number, answer] = self._number(after)
        return found

    def _number(self, state: State) -> int:
        if state not in self._numbers:
            self._numbers[state] = len(self._states)
            self._states.append(state)
        return self._numbers[state]

    def _acts_of(self, place: Place) -> _Acts:
        found = self._acts.get(place)
        if found is None:
            step = self._library.step(place)
            lines: tuple[Line, ...] = getattr(step, "lines", ()) or getattr(step, "owed", ())
            acts = [(number, line) for number, line in enumerate(lines) if line.act]
            found = self._acts[place] = _Acts(
                tuple(Doing(place, line.act, number) for number, line in acts),
                must_come_before([line for _, line in acts], self._pairs),
            )
        return found
