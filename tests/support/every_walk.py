"""Rules judged by walking every walk, by `advance` and the definitions alone; nothing is merged."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

from chamberwise.engine.meaning.advance import advance, begin, moves
from chamberwise.engine.meaning.moments import Moment, last_moments, moments_of
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import AnyOf, Extent, Pattern, Rule
from chamberwise.engine.patterns.formula import holds
from chamberwise.engine.patterns.machine import Machine, machine_of
from chamberwise.engine.proof.rules import comes_back_by
from chamberwise.engine.proof.trace import formula, letters

MOST_WALKS = 600

Shown = tuple[frozenset[str], ...]


@dataclass
class Judged:
    """What every walk of at most `moves` moves says of one rule: the fewest moves that break it."""

    rule: Rule
    broken_after: int | None = None
    bites: bool = False


@dataclass
class EveryWalk:
    """All walks of a pathway up to a number of moves; `complete` where there are no longer ones."""

    library: Library
    pathway: str
    rules: Sequence[Rule]
    most: int = MOST_WALKS
    judged: list[Judged] = field(default_factory=list)
    moves: int = 0
    complete: bool = True
    walks: int = 0

    def __post_init__(self) -> None:
        self.judged = [Judged(rule) for rule in self.rules]
        self._watched = [_Watched.of(rule, self) for rule in self.rules]
        self._biting = [_Watched.biting(rule, self) for rule in self.rules]
        for rule, biting in zip(self.judged, self._biting, strict=True):
            rule.bites = biting is None
        self._walk()

    def _walk(self) -> None:
        shown: tuple[Shown, ...] = ((),) * (2 * len(self.rules))
        front = [(begin(self.library, self.pathway).state, shown)]
        while front:
            self._judge(front)
            onward = [after for walk in front for after in self._onward(*walk)]
            self.walks += len(onward)
            if self.walks > self.most:
                self.complete = False
                return
            self.moves += 1
            front = onward

    def _onward(
        self, state: State, shown: tuple[Shown, ...]
    ) -> Iterator[tuple[State, tuple[Shown, ...]]]:
        for move in moves(self.library, state):
            moments = moments_of(self.library, state, move)
            yield advance(self.library, state, move), self._more(shown, moments)

    def _more(self, shown: tuple[Shown, ...], moments: Sequence[Moment]) -> tuple[Shown, ...]:
        watched = (*self._watched, *self._biting)
        return tuple(
            before + each.letters(moments) if each else before
            for before, each in zip(shown, watched, strict=True)
        )

    def _judge(self, front: list[tuple[State, tuple[Shown, ...]]]) -> None:
        """Judge the walks of as many moves as have been made."""
        for state, before in front:
            last = last_moments(self.library, state)
            shown = self._more(before, last)
            here = state.place
            is_end = bool(last) and not (
                here.pathway == self.pathway
                and here.step in comes_back_by(self.library, self.pathway)
            )
            for number, judged in enumerate(self.judged):
                if judged.broken_after is None and self._watched[number].breaks(
                    shown[number], is_end=is_end
                ):
                    judged.broken_after = self.moves
                biting = self._biting[number]
                if biting and biting.breaks(shown[len(self.rules) + number], is_end=False):
                    judged.bites = True


@dataclass
class _Watched:
    rule: Rule
    every: EveryWalk
    machine: Machine
    cache: dict[Moment, Shown] = field(default_factory=dict)

    @staticmethod
    def of(rule: Rule, every: EveryWalk) -> _Watched:
        return _Watched(rule, every, machine_of(formula(rule)))

    @staticmethod
    def biting(rule: Rule, every: EveryWalk) -> _Watched | None:
        """Return a watch that breaks where the rule says anything; none where it always does."""
        never = nothing_to_say(rule)
        return _Watched.of(never, every) if never else None

    def letters(self, moments: Sequence[Moment]) -> Shown:
        found: Shown = ()
        for moment in moments:
            if moment not in self.cache:
                shown = letters(self.every.library, self.every.pathway, self.rule, [moment])
                self.cache[moment] = tuple(shown)
            found += self.cache[moment]
        return found

    def breaks(self, shown: Shown, *, is_end: bool) -> bool:
        atoms = self.machine.atoms
        numbers = [
            sum(1 << place for place, name in enumerate(atoms) if name in letter)
            for letter in shown
        ]
        if self.machine.lost is not None and self.machine.run(numbers) == self.machine.lost:
            return True
        return is_end and not holds(formula(self.rule), shown)


def nothing_to_say(rule: Rule) -> Rule | None:
    """Return the rule that says "what this rule is of never comes"; none where that is not asked.

    What a rule forbids under conditions is asked for by its deed alone; of what is forbidden
    outright, or must always be, or must come, only whether its scope is ever entered. "Directly"
    passes over all but acts.
    """
    scope = rule.scope
    outright = rule.pattern is Pattern.ABSENCE and any(each == each.event for each in rule.of)
    if outright or rule.pattern in (Pattern.EXISTENCE, Pattern.UNIVERSALITY):
        if scope.extent is Extent.GLOBALLY:
            return None
        opens = scope.closes if scope.extent is Extent.BEFORE else scope.opens
        return _never(rule, opens, Extent.GLOBALLY)
    if rule.pattern in (Pattern.ABSENCE, Pattern.BOUNDED_EXISTENCE):
        return _never(rule, tuple(each.event for each in rule.of), scope.extent)
    if rule.pattern in (Pattern.CHAIN_PRECEDENCE, Pattern.CHAIN_RESPONSE):
        return replace(rule, pattern=Pattern.CHAIN_PRECEDENCE, by=())
    return _never(rule, rule.of, scope.extent)


def _never(rule: Rule, of: AnyOf, extent: Extent) -> Rule:
    return replace(
        rule,
        pattern=Pattern.ABSENCE,
        of=of,
        by=(),
        times=0,
        scope=replace(rule.scope, extent=extent),
    )
