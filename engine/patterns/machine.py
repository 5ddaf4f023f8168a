"""From a formula to the smallest machine that watches it, one moment after the other.

The formula is put off moment by moment: what must still hold after a moment is a formula again,
and there are finitely many of them up to the laws of "and" and "or". Equal states are then merged.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TypeAlias

from chamberwise.engine.patterns.formula import (
    And,
    Atom,
    Constant,
    Formula,
    Next,
    Not,
    Or,
    Until,
    WeakNext,
    WeakUntil,
    holds,
)

ATOMS = ("P", "Q", "R", "S")

Literal: TypeAlias = tuple[Formula, bool]
"""What is put off to the next moment, and its value if there is none."""

Clauses: TypeAlias = frozenset[frozenset[Literal]]
"""A disjunction of conjunctions, without one that another implies."""

_NEVER: Clauses = frozenset()
_SURE: Clauses = frozenset({frozenset()})


@dataclass(frozen=True, slots=True, eq=False)
class Machine:
    """A minimal deterministic machine. A letter has one bit for each of `atoms` that is true.

    `after[state][letter]` is the next state; the first state is 0. A walk that ends in a state of
    `good` keeps the formula; from `lost` no walk ever keeps it again.
    """

    atoms: tuple[str, ...]
    after: tuple[tuple[int, ...], ...]
    good: frozenset[int]
    lost: int | None

    def run(self, letters: Sequence[int], state: int = 0) -> int:
        """Return the state after some letters."""
        for letter in letters:
            state = self.after[state][letter]
        return state


@lru_cache(maxsize=256)
def machine_of(formula: Formula) -> Machine:
    """Return the machine of a formula over P, Q, R and S."""
    atoms = tuple(name for name in ATOMS if name in _names(formula))
    letters = [
        frozenset(name for place, name in enumerate(atoms) if letter >> place & 1)
        for letter in range(1 << len(atoms))
    ]
    first = _literal(formula, holds(formula, ()))
    states, met, after = {first: 0}, [first], []
    for clauses in met:  # grows while it is gone through
        row = []
        for letter in letters:
            onward = _after(clauses, letter)
            if onward not in states:
                states[onward] = len(met)
                met.append(onward)
            row.append(states[onward])
        after.append(row)
    good = {
        number
        for clauses, number in states.items()
        if any(all(at_end for _, at_end in clause) for clause in clauses)
    }
    return _smallest(atoms, after, good)


def _names(formula: Formula) -> set[str]:
    match formula:
        case Atom(name):
            return {name}
        case Not(inner) | Next(inner) | WeakNext(inner):
            return _names(inner)
        case And(left, right) | Or(left, right) | Until(left, right) | WeakUntil(left, right):
            return _names(left) | _names(right)
    return set()


def _after(clauses: Clauses, letter: frozenset[str]) -> Clauses:
    found = _NEVER
    for clause in clauses:
        both = _SURE
        for formula, _ in clause:
            both = _and(both, _put_off_once(formula, letter))
        found = _or(found, both)
    return found


@lru_cache(maxsize=4096)
def _put_off_once(formula: Formula, letter: frozenset[str]) -> Clauses:
    return _put_off(formula, letter, True)


def _put_off(formula: Formula, letter: frozenset[str], wanted: bool) -> Clauses:
    """Return what the next moment must show for a formula to be as wanted at this one."""
    match formula:
        case Constant(value):
            return _SURE if value is wanted else _NEVER
        case Atom(name):
            return _SURE if (name in letter) is wanted else _NEVER
        case Not(inner):
            return _put_off(inner, letter, not wanted)
        case And(left, right) | Or(left, right):
            join = _and if isinstance(formula, And) is wanted else _or
            return join(_put_off(left, letter, wanted), _put_off(right, letter, wanted))
        case Next(inner) | WeakNext(inner):
            weak = isinstance(formula, WeakNext) is wanted
            return _literal(inner if wanted else Not(inner), weak)
    assert isinstance(formula, Until | WeakUntil)
    return _put_off_until(formula, letter, wanted)


def _put_off_until(formula: Until | WeakUntil, letter: frozenset[str], wanted: bool) -> Clauses:
    """By its law: `l U r` is `r`, or `l` and the same from the next moment on."""
    right = _put_off(formula.right, letter, wanted)
    left = _put_off(formula.left, letter, wanted)
    weak = isinstance(formula, WeakUntil) is wanted
    onward = _literal(formula if wanted else Not(formula), weak)
    if wanted:
        return _or(right, _and(left, onward))
    return _and(right, _or(left, onward))


def _literal(formula: Formula, at_end: bool) -> Clauses:
    return frozenset({frozenset({(formula, at_end)})})


def _and(left: Clauses, right: Clauses) -> Clauses:
    return _least({one | other for one in left for other in right})


def _or(left: Clauses, right: Clauses) -> Clauses:
    return _least({*left, *right})


def _least(clauses: set[frozenset[Literal]]) -> Clauses:
    return frozenset(one for one in clauses if not any(other < one for other in clauses))


def _smallest(atoms: tuple[str, ...], after: list[list[int]], good: set[int]) -> Machine:
    """Merge states that no walk tells apart (Moore), numbered in the order first met."""
    block = [int(state in good) for state in range(len(after))]
    while True:
        kinds: dict[tuple[int, ...], int] = {}
        finer = [
            kinds.setdefault((block[state], *(block[to] for to in row)), len(kinds))
            for state, row in enumerate(after)
        ]
        if len(kinds) == len(set(block)):
            break
        block = finer
    number = _renumbered(block, after)
    rows: dict[int, tuple[int, ...]] = {}
    for state, row in enumerate(after):
        rows[number(state)] = tuple(number(to) for to in row)
    ends_well = frozenset(number(state) for state in good)
    lost = next(
        (state for state, row in rows.items() if set(row) == {state} and state not in ends_well),
        None,
    )
    return Machine(atoms, tuple(rows[state] for state in sorted(rows)), ends_well, lost)


def _renumbered(block: list[int], after: list[list[int]]) -> Callable[[int], int]:
    order: dict[int, int] = {}
    for state in range(len(after)):  # states were met breadth first from the first
        order.setdefault(block[state], len(order))
    return lambda state: order[block[state]]
