"""Where every walk may end that gives the first answers of a combination, all else being open.

One search over all states serves all combinations: each state carries, as one integer, the set of
all first answers that some walk has given on the way there. A state is gone on from once all
that leads to it has been, so that each arrow is followed once; where arrows go round, until
nothing new comes.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from heapq import heappop, heappush
from itertools import product
from typing import TypeAlias

from chamberwise.engine.cases.case import Combination
from chamberwise.engine.cases.stepping import Position, Stepping
from chamberwise.engine.exploration.program import Next
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import CANNOT_TELL, Outcome, PathwayId, Question
from chamberwise.engine.model.words import FindingId, ValueId

Given: TypeAlias = int
"""A set of tuples of first answers: a bit for each, by mixed digits, 0 for "not asked yet"."""
Move: TypeAlias = tuple[int, int, int]
"""The state led to; the finding's number or -1; the bits that the answer is by."""


@dataclass(frozen=True, slots=True)
class Digits:
    """The place of each finding's first answer in the number of a tuple."""

    over: tuple[FindingId, ...]
    values: tuple[tuple[ValueId, ...], ...]
    """Of each finding all answers, "cannot tell" the last."""
    weight: tuple[int, ...]
    unasked: tuple[Given, ...]

    def after(self, given: Given, finding: int, values: int) -> Given:
        """Return what is given after a question was answered by some values, as bits."""
        if finding < 0:
            return given
        new = given & self.unasked[finding]
        found, weight = given & ~new, self.weight[finding]
        for digit in range(1, len(self.values[finding]) + 1):
            if values >> digit & 1:
                found |= new << digit * weight
        return found

    def consistent(self, combination: Combination) -> Given:
        """Return all tuples of a combination: each finding answered so or not asked."""
        numbers = [0]
        for place, (_, value) in enumerate(combination):
            digit = (self.values[place].index(value) + 1) * self.weight[place]
            numbers += [number + digit for number in numbers]
        return sum(1 << number for number in numbers)


def may_end_in(
    library: Library, pathway: PathwayId, combinations: Sequence[Combination]
) -> list[tuple[Place, ...]]:
    """Return, for each combination of the same findings, every outcome its walks may end in.

    The answers to all else, and later answers to the same findings, are any that are offered.
    """
    over = tuple(name for name, _ in combinations[0]) if combinations else ()
    digits = _digits(library, pathway, over)
    stepping = Stepping(library, pathway)
    ends = _Search(stepping, digits).ends()
    wanted = [digits.consistent(each) for each in combinations]
    return [tuple(place for place, given in ends.items() if given & each) for each in wanted]


def _digits(library: Library, pathway: PathwayId, over: tuple[FindingId, ...]) -> Digits:
    values, weights, weight = [], [], 1
    for name in over:
        values.append((*(each.id for each in library.finding(pathway, name).values), CANNOT_TELL))
        weights.append(weight)
        weight *= len(values[-1]) + 1
    counts = [range(len(each) + 1) for each in values]
    unasked = [0] * len(over)
    for place in range(len(over)):
        others = [counts[each] if each != place else range(1) for each in range(len(over))]
        numbers = (
            sum(digit * by for digit, by in zip(each, weights, strict=True))
            for each in product(*others)
        )
        unasked[place] = sum(1 << number for number in numbers)
    return Digits(over, tuple(values), tuple(weights), tuple(unasked))


class _Search:
    """Every state, by number in the order met, and the moves from each."""

    def __init__(self, stepping: Stepping, digits: Digits) -> None:
        self.stepping = stepping
        self.digits = digits
        self.number: dict[Position, int] = {}
        self.positions: list[Position] = []
        self.moves: dict[int, list[Move]] = {}
        self.end_of: dict[int, Place] = {}

    def ends(self) -> dict[Place, Given]:
        """Return by outcome the first answers of the walks that end there, in document order."""
        first = self._met(self.stepping.first(self.stepping.program.first_bits, []))
        order = self._order(first)
        given: dict[int, Given] = {first: 1}
        news: dict[int, Given] = {first: 1}
        waiting = [(order[first], first)]
        found: dict[Place, Given] = {}
        while waiting:
            _, state = heappop(waiting)
            new = news.pop(state)
            if state in self.end_of:
                place = self.end_of[state]
                found[place] = found.get(place, 0) | new
            for target, finding, values in self.moves[state]:
                image = self.digits.after(new, finding, values) & ~given.get(target, 0)
                if not image:
                    continue
                if target not in news:
                    heappush(waiting, (order[target], target))
                given[target] = given.get(target, 0) | image
                news[target] = news.get(target, 0) | image
        places = [node.place for node in self.stepping.program.nodes]
        return {place: found[place] for place in places if place in found}

    def _order(self, first: int) -> dict[int, int]:
        """Meet every state, depth first; but for rings, each is placed after all that lead to it.

        Places are negative numbers.
        """
        order: dict[int, int] = {}
        self.moves[first] = [*self._open(first)]
        under_way = [(first, iter(self.moves[first]))]
        while under_way:
            state, onward = under_way[-1]
            target = next((each for each, *_ in onward if each not in self.moves), None)
            if target is None:
                order[state] = -len(order)
                under_way.pop()
            else:
                self.moves[target] = [*self._open(target)]
                under_way.append((target, iter(self.moves[target])))
        return order

    def _met(self, position: Position) -> int:
        state = self.number.setdefault(position, len(self.positions))
        if state == len(self.positions):
            self.positions.append(position)
        return state

    def _open(self, state: int) -> Iterator[Move]:
        position = self.positions[state]
        node = self.stepping.program.nodes[position[0]]
        if isinstance(node.step, Outcome):
            self.end_of[state] = node.place
            return
        for move in self.stepping.moves(position):
            there = self._met(self.stepping.made(position, move, []))
            if isinstance(node.step, Question) and node.step.ask in self.digits.over:
                finding = self.digits.over.index(node.step.ask)
                yield there, finding, self._values(position, node.step, finding, move)
            else:
                yield there, -1, 0

    def _values(self, position: Position, step: Question, finding: int, move: Next) -> int:
        """Return the digits an answer may be by: its values that are not ruled out."""
        place, _, bits = position
        program, values = self.stepping.program, self.digits.values[finding]
        if move[0] == CANNOT_TELL:
            return 1 << len(values)
        field = program.layout.field(program.nodes[place].place.pathway, step.ask)
        means = next(answer.means for answer in step.answers if answer.id == move[0])
        possible = field.values(field.mask(means) & bits)
        return sum(1 << values.index(value) + 1 for value in possible if value in values)
