"""A walk and one rule side by side: its moments by move, and what each shows of the rule."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from chamberwise.engine.meaning.advance import Passage, begin, passage
from chamberwise.engine.meaning.happens import happens
from chamberwise.engine.meaning.moments import Moment, last_moments, moments_of
from chamberwise.engine.meaning.state import Move, State
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import AnyOf, Happening, Rule
from chamberwise.engine.model.words import ActId, FindingId
from chamberwise.engine.proof.verdict import Counterexample


@dataclass(frozen=True, slots=True)
class Leg:
    """One move: the state it is made in, what it leads to, and the number of its first moment."""

    before: State
    move: Move
    made: Passage
    first: int
    moments: tuple[Moment, ...]


@dataclass(frozen=True)
class Telling:
    """A rule and a walk that breaks it."""

    library: Library
    rule: Rule
    counterexample: Counterexample

    @cached_property
    def first(self) -> Passage:
        """How the walk begins."""
        return begin(self.library, self.counterexample.pathway)

    @cached_property
    def legs(self) -> tuple[Leg, ...]:
        """Every move of the walk with its moments."""
        return tuple(self._legs())

    def _legs(self) -> Iterator[Leg]:
        state, number = self.first.state, 0
        for move in self.counterexample.moves:
            made = passage(self.library, state, move)
            shown = moments_of(self.library, state, move)
            yield Leg(state, move, made, number, shown)
            state, number = made.state, number + len(shown)

    @property
    def last(self) -> State:
        """The state the walk ends in."""
        return self.legs[-1].made.state if self.legs else self.first.state

    @cached_property
    def at_the_end(self) -> tuple[Moment, ...]:
        """What is owed and the outcome, where the walk came to its end."""
        return last_moments(self.library, self.last)

    @cached_property
    def moments(self) -> tuple[Moment, ...]:
        """Every moment of the walk in order."""
        return (*(shown for leg in self.legs for shown in leg.moments), *self.at_the_end)

    @property
    def broke_at(self) -> int:
        """The number of the moment at which the rule broke; the last where it broke at the end."""
        moment = self.counterexample.moment
        return len(self.moments) - 1 if moment is None else moment

    def step_of(self, moment: int) -> int:
        """Return which step of the walk a moment belongs to, counted from 1."""
        passed = (leg for leg in self.legs if leg.first + len(leg.moments) <= moment)
        return 1 + sum(1 for _ in passed)

    def matching(self, any_of: AnyOf, moment: Moment) -> Happening | None:
        """Return the first of several happenings that a moment shows, if it shows one."""
        pathway = self.counterexample.pathway
        found = (each for each in any_of if happens(self.library, pathway, (each,), moment))
        return next(found, None)

    def shows(self, any_of: AnyOf, moment: Moment) -> bool:
        """Whether a moment shows one of several happenings."""
        return self.matching(any_of, moment) is not None

    @cached_property
    def happenings(self) -> tuple[Happening, ...]:
        """Everything the rule speaks of."""
        return happenings_of(self.rule)

    @cached_property
    def acts(self) -> frozenset[ActId]:
        """The acts the rule speaks of."""
        return frozenset(act for each in self.happenings for act in (*each.acts, *each.warns_of))

    @cached_property
    def findings(self) -> tuple[FindingId, ...]:
        """The findings the rule speaks of, in the order named."""
        return tuple(dict.fromkeys(name for each in self.happenings for name in _findings(each)))


def happenings_of(rule: Rule) -> tuple[Happening, ...]:
    """Return everything that a rule speaks of."""
    return (*rule.of, *rule.by, *rule.scope.opens, *rule.scope.closes)


def _findings(happening: Happening) -> Iterator[FindingId]:
    yield from happening.asks
    for condition in (
        happening.surely,
        happening.possibly,
        happening.unless_surely,
        happening.unless_possibly,
    ):
        yield from (name for name, _ in condition.terms)
    yield from (*happening.known, *happening.unless_known, *happening.stale, *happening.unknown)
