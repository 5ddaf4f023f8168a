"""Whether two versions behave alike on every walk, and if not, a shortest walk that tells them

apart: both are walked side by side, by what is asked, answered, done, said and warned of.
"""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from dataclasses import dataclass, field
from typing import TypeAlias

from chamberwise.engine.comparing.change import Kind, Rating, Where
from chamberwise.engine.comparing.saying import At
from chamberwise.engine.comparing.side import Position, Side, side
from chamberwise.engine.comparing.steps import changes_of_step
from chamberwise.engine.exploration.program import DONE, Node
from chamberwise.engine.meaning.state import Answered, Done, Move
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Branch, PathwayId, Question, Step

MOST_PAIRS = 400_000
_NOTICED = frozenset(
    {
        Kind.STEP,
        Kind.QUESTION,
        Kind.FINDING_ASKED,
        Kind.ANSWER,
        Kind.LINE,
        Kind.SPOKEN,
        Kind.DUTY,
        Kind.ACT,
        Kind.OWED,
        Kind.WHEN,
        Kind.CAUTION,
        Kind.HANDOVER,
        Kind.TITLE,
        Kind.ORDER,
    }
)
"""What a team notices at a step, where it leads left aside."""


@dataclass(frozen=True, slots=True)
class Alike:
    """No walk tells the versions apart; `pairs` of states were seen."""

    pairs: int


@dataclass(frozen=True, slots=True)
class Apart:
    """A shortest walk after which the versions differ, as the moves on either side.

    Both walks are the same in everything noticed; what is met at the end of them is not.
    """

    old: tuple[Move, ...]
    new: tuple[Move, ...]


@dataclass(frozen=True, slots=True)
class Undecided:
    """The search stopped after so many pairs of states without a difference."""

    pairs: int


Behaviour: TypeAlias = Alike | Apart | Undecided


def behaviour(
    old: tuple[Library, PathwayId], new: tuple[Library, PathwayId], most: int = MOST_PAIRS
) -> Behaviour:
    """Return whether two versions behave alike. Every name in them has to be defined.

    With bounds left open there are more walks and far fewer states: what is alike there is alike.
    Only otherwise are bounds counted, and shorter walks come first.
    """
    loosely = _Pairs(side(*old, counted=False), side(*new, counted=False), most).search()
    if isinstance(loosely, Alike):
        return loosely
    return _Pairs(side(*old, counted=True), side(*new, counted=True), most).search()


@dataclass(slots=True)
class _Pairs:
    old: Side
    new: Side
    most: int
    alike: dict[tuple[int, int], bool] = field(default_factory=dict)
    by: dict[tuple[Position, Position], tuple[tuple[Position, Position], str, str]] = field(
        default_factory=dict
    )
    """Each pair met but the first: the pair before it, and the moves made there."""

    def search(self) -> Behaviour:
        first = (self.old.first, self.new.first)
        met, waiting = {first}, [first]
        for pair in waiting:
            onward = self._onward(pair)
            if onward is None:
                return self._apart(pair)
            for was, now, following in onward:
                if following not in met:
                    if len(met) >= self.most:
                        return Undecided(len(met))
                    met.add(following)
                    self.by[following] = (pair, was, now)
                    waiting.append(following)
        return Alike(len(met))

    def _onward(
        self, pair: tuple[Position, Position]
    ) -> list[tuple[str, str, tuple[Position, Position]]] | None:
        """Return what follows a pair, or `None` where what is met there is not alike."""
        one, other = pair
        if not self._meet_alike(one, other):
            return None
        moves, by_key = self.old.onward(one), _by_key(self.new, other)
        if len(moves) != len(by_key):
            return None
        found = []
        asked = self.old.node(one)
        for name, onward in moves:
            key = _key(asked, name)
            if key not in by_key:
                return None
            now, there = by_key[key]
            found.append((name, now, (onward, there)))
        return found

    def _meet_alike(self, one: Position, other: Position) -> bool:
        key = one[0], other[0]
        if key not in self.alike:
            self.alike[key] = _look_alike(self.old.node(one), self.new.node(other))
        return self.alike[key]

    def _apart(self, pair: tuple[Position, Position]) -> Apart:
        old: list[Move] = []
        new: list[Move] = []
        while pair in self.by:
            pair, was, now = self.by[pair]
            old.append(_move(self.old.node(pair[0]), was))
            new.append(_move(self.new.node(pair[1]), now))
        return Apart(tuple(reversed(old)), tuple(reversed(new)))


def _move(node: Node, name: str) -> Move:
    return Answered(name) if isinstance(node.step, Question) and name != DONE else Done()


def _by_key(side: Side, position: Position) -> Mapping[Hashable, tuple[str, Position]]:
    node, onward = side.node(position), side.onward(position)
    return {_key(node, name): (name, to) for name, to in onward}


def _key(node: Node, name: str) -> Hashable:
    """Return what a move is the same move by: of an answer, the values it stands for."""
    if node.is_door or not isinstance(node.step, Question):
        return name
    return next(frozenset(each.means) for each in node.step.answers if each.id == name)


def _look_alike(one: Node, other: Node) -> bool:
    if one.is_door or other.is_door:
        times = [node.step.bound and node.step.bound.at_most for node in (one, other)]
        return one.is_door and other.is_door and times[0] == times[1]
    return noticed_alike(one.step, other.step)


def noticed_alike(one: Step, other: Step) -> bool:
    """Return whether a team notices the same at two steps, names and targets left aside.

    A wording that changed in spelling alone is not noticed.
    """
    if isinstance(one, Branch) and isinstance(other, Branch):
        return True
    found = changes_of_step(one, other, At(Where(None, "steps")), lambda _, __: True)
    return not any(
        change.kind in _NOTICED and change.rating is not Rating.EDITORIAL for change in found
    )
