"""One walk judged by one rule, straight from the definitions: the measure of the proof."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from chamberwise.engine.meaning.advance import advance, begin
from chamberwise.engine.meaning.happens import happens
from chamberwise.engine.meaning.moments import Moment, last_moments, moments_of
from chamberwise.engine.meaning.state import Move
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import CHAINS, Rule
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.patterns.formula import Formula
from chamberwise.engine.patterns.machine import machine_of
from chamberwise.engine.patterns.published import formula_of


def formula(rule: Rule) -> Formula:
    """Return the published formula of a rule."""
    return formula_of(rule.pattern, rule.scope.extent, rule.times)


def trace(library: Library, pathway: PathwayId, moves: Iterable[Move]) -> list[Moment]:
    """Return the moments of a walk from the entry of a pathway. Raises `IllegalMoveError`."""
    state = begin(library, pathway).state
    found: list[Moment] = []
    for move in moves:
        found += moments_of(library, state, move)
        state = advance(library, state, move)
    return found + list(last_moments(library, state))


def letters(
    library: Library, pathway: PathwayId, rule: Rule, moments: Sequence[Moment]
) -> list[frozenset[str]]:
    """Return, for each moment that the rule looks at, which of P, Q, R and S it shows."""
    roles = {"P": rule.of, "Q": rule.scope.opens, "R": rule.scope.closes, "S": rule.by}
    looked_at = [
        moment for moment in moments if rule.pattern not in CHAINS or moment.act is not None
    ]
    return [
        frozenset(
            name for name, any_of in roles.items() if happens(library, pathway, any_of, moment)
        )
        for moment in looked_at
    ]


def is_lost(
    library: Library, pathway: PathwayId, rule: Rule, moments: Sequence[Moment]
) -> int | None:
    """Return the moment from which the rule can no longer be kept, however the walk goes on."""
    machine = machine_of(formula(rule))
    state = 0
    for number, moment in enumerate(moments):
        for letter in letters(library, pathway, rule, [moment]):
            state = machine.after[state][_as_bits(letter, machine.atoms)]
        if state == machine.lost:
            return number
    return None


def _as_bits(letter: frozenset[str], atoms: Sequence[str]) -> int:
    return sum(1 << place for place, name in enumerate(atoms) if name in letter)
