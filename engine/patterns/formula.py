"""Linear temporal logic over walks that end (LTLf, De Giacomo and Vardi 2013).

A formula is read at a moment of a walk. At the last moment "next" is false and "weak next" true;
"until" must be kept before the walk ends, "weak until" and "always" need not.
"""

from __future__ import annotations

from collections.abc import Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Formula:
    """One formula; `~`, `&`, `|` and `>>` build greater ones (`>>` is "implies")."""

    def __invert__(self) -> Formula:
        return Not(self)

    def __and__(self, other: Formula) -> Formula:
        return And(self, other)

    def __or__(self, other: Formula) -> Formula:
        return Or(self, other)

    def __rshift__(self, other: Formula) -> Formula:
        return Or(Not(self), other)


@dataclass(frozen=True, slots=True)
class Constant(Formula):
    """Always or never true."""

    value: bool


@dataclass(frozen=True, slots=True)
class Atom(Formula):
    """True at the moments that show it."""

    name: str


@dataclass(frozen=True, slots=True)
class Not(Formula):
    """Negation."""

    inner: Formula


@dataclass(frozen=True, slots=True)
class And(Formula):
    """Conjunction."""

    left: Formula
    right: Formula


@dataclass(frozen=True, slots=True)
class Or(Formula):
    """Disjunction."""

    left: Formula
    right: Formula


@dataclass(frozen=True, slots=True)
class Next(Formula):
    """There is a next moment, and there it holds."""

    inner: Formula


@dataclass(frozen=True, slots=True)
class WeakNext(Formula):
    """Either this is the last moment, or it holds at the next."""

    inner: Formula


@dataclass(frozen=True, slots=True)
class Until(Formula):
    """The right comes, and up to then the left holds."""

    left: Formula
    right: Formula


@dataclass(frozen=True, slots=True)
class WeakUntil(Formula):
    """The left holds up to where the right comes, or to the end."""

    left: Formula
    right: Formula


TRUE, FALSE = Constant(True), Constant(False)


def always(inner: Formula) -> Formula:
    """Return "at every moment from here on"."""
    return WeakUntil(inner, FALSE)


def some_time(inner: Formula) -> Formula:
    """Return "at this or a later moment"."""
    return Until(TRUE, inner)


def holds(formula: Formula, walk: Sequence[AbstractSet[str]], at: int = 0) -> bool:
    """Whether a formula holds of a walk, each moment given by the names of the atoms it shows.

    This is the definition, by recursion and slow; no moment is shown by an empty walk.
    """
    match formula:
        case Constant(value):
            return value
        case Atom(name):
            return at < len(walk) and name in walk[at]
        case Not(inner):
            return not holds(inner, walk, at)
        case And(left, right):
            return holds(left, walk, at) and holds(right, walk, at)
        case Or(left, right):
            return holds(left, walk, at) or holds(right, walk, at)
        case Next(inner):
            return at + 1 < len(walk) and holds(inner, walk, at + 1)
        case WeakNext(inner):
            return at + 1 >= len(walk) or holds(inner, walk, at + 1)
        case Until() | WeakUntil():
            return _until(formula, walk, at)
    raise TypeError(formula)


def _until(formula: Until | WeakUntil, walk: Sequence[AbstractSet[str]], at: int) -> bool:
    for here in range(at, len(walk)):
        if holds(formula.right, walk, here):
            return True
        if not holds(formula.left, walk, here):
            return False
    return isinstance(formula, WeakUntil)
