"""Very many walks at once: each is a lane, and lanes that stand alike go on together.

A set of lanes is one integer with a bit a lane, so that a question parts them by a few ANDs.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import TypeAlias

from chamberwise.engine.cases.answering import chosen, undecided
from chamberwise.engine.cases.case import MOST_MOVES
from chamberwise.engine.cases.stepping import Position, Stepping
from chamberwise.engine.exploration.program import Next
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.step import CANNOT_TELL, Outcome, Question
from chamberwise.engine.model.words import Finding, FindingId, ValueId

Lanes: TypeAlias = int
Parted: TypeAlias = tuple[list[Lanes], Lanes]
Said: TypeAlias = tuple[tuple[str, str], ...]
"""What the steps passed say for the table, each thing once, by column and text."""


@dataclass(frozen=True, slots=True)
class Answers:
    """By finding and value the lanes that answer so: at first, and once the finding is stale."""

    every: Lanes
    first: Mapping[FindingId, Mapping[ValueId, Lanes]]
    again: Mapping[FindingId, Mapping[ValueId, Lanes]]

    def to(self, asked: Finding, *, is_stale: bool) -> Mapping[ValueId, Lanes]:
        """Return the lanes by the value they answer with; none where the table has no answer."""
        if is_stale and asked.id in self.again:
            return self.again[asked.id]
        if asked.id in self.first:
            return self.first[asked.id]
        value = chosen(asked) or undecided(asked)
        return {value: self.every} if value else {}


@dataclass(frozen=True, slots=True)
class Arrival:
    """How some lanes ended: at an outcome or, where there is none, open.

    Or they are no walk at all: a question does not offer their answer, ruled out as it is there.
    """

    outcome: Place | None
    said: Said
    is_ruled_out: bool = False


class Flock:
    """All lanes under way."""

    def __init__(self, stepping: Stepping, answers: Answers, noticed: Collection[int] = ()) -> None:
        self.stepping = stepping
        self.answers = answers
        self.noticed = noticed
        self.came_by: Lanes = 0
        """The lanes that came by one of the nodes to be noticed."""
        self.arrived: dict[Arrival, Lanes] = {}
        self._says = [node.step.plan for node in stepping.program.nodes]
        self._front: dict[tuple[Position, Said], Lanes] = {}
        self._parts: dict[tuple[int, bool, tuple[str | None, ...]], Parted] = {}

    def walk(self, starts: Mapping[int, Lanes]) -> Mapping[Arrival, Lanes]:
        """Walk all lanes to their ends; `starts` has them by the bits they begin with."""
        for bits, lanes in starts.items():
            passed: list[int] = []
            self._stand(self.stepping.first(bits, passed), (), passed, lanes)
        for _ in range(MOST_MOVES):
            front, self._front = self._front, {}
            for (position, said), lanes in front.items():
                self._onward(position, said, lanes)
        for (_, said), lanes in self._front.items():
            self._arrive(None, said, lanes)
        return self.arrived

    def _onward(self, position: Position, said: Said, lanes: Lanes) -> None:
        node = self.stepping.program.nodes[position[0]]
        moves = self.stepping.moves(position)
        if isinstance(node.step, Outcome):
            self._arrive(node.place, said, lanes)
            return
        parts, ruled_out = [lanes], 0
        if isinstance(node.step, Question):
            parts, ruled_out = self._parted(position, node.step, moves)
        if away := lanes & ruled_out:
            self._arrive(None, said, away, is_ruled_out=True)
            lanes ^= away
        for move, part in zip(moves, parts, strict=False):
            here = lanes & part
            if here:
                passed: list[int] = []
                onward = self.stepping.made(position, move, passed)
                self._stand(onward, said, passed, here)
                lanes ^= here
        self._arrive(None, said, lanes)

    def _parted(self, position: Position, step: Question, moves: list[Next]) -> Parted:
        """Return, for each move at a question, all lanes that make it if they come here.

        Then those with an answer that is not offered. No lane stands in two parts.
        """
        place, _, bits = position
        program = self.stepping.program
        asked = program.layout.field(program.nodes[place].place.pathway, step.ask)
        is_stale = bool(bits & self.stepping.stale_bit(asked.every))
        names = tuple(name for name, *_ in moves)
        found = self._parts.get((place, is_stale, names))
        if found is None:
            by_value = self.answers.to(asked.finding, is_stale=is_stale)
            parts = _parts(step, names, by_value)
            ruled_out = sum(by_value.values()) & ~sum(parts)
            if not is_stale and ruled_out and step.ask in self.answers.again:
                again = _parts(step, names, self.answers.again[step.ask])
                parts = [part | more & ruled_out for part, more in zip(parts, again, strict=True)]
            found = parts, sum(by_value.values()) & ~sum(parts)
            self._parts[place, is_stale, names] = found
        return found

    def _stand(self, position: Position, said: Said, passed: list[int], lanes: Lanes) -> None:
        for place in passed:
            if place in self.noticed:
                self.came_by |= lanes
            for entry in self._says[place]:
                if entry not in said:
                    said = (*said, entry)
        key = position, said
        there = self._front.get(key)
        self._front[key] = lanes if there is None else there | lanes

    def _arrive(
        self, outcome: Place | None, said: Said, lanes: Lanes, *, is_ruled_out: bool = False
    ) -> None:
        if not lanes:
            return
        arrival = Arrival(outcome, said, is_ruled_out)
        self.arrived[arrival] = self.arrived.get(arrival, 0) | lanes


def _parts(
    step: Question, names: tuple[str | None, ...], by_value: Mapping[ValueId, Lanes]
) -> list[Lanes]:
    means = {answer.id: answer.means for answer in step.answers}
    parts, left = [], -1
    for name in names:
        values = (CANNOT_TELL,) if name == CANNOT_TELL else means.get(name or "", ())
        part = 0
        for value in values:
            part |= by_value.get(value, 0)
        parts.append(part & left)
        left &= ~part
    return parts
