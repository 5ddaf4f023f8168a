"""What each pattern means in each scope: the published formulas, word for word in their letters.

Patterns with scopes: Dwyer, Avrunin and Corbett, "Patterns in property specifications for
finite-state verification", ICSE 1999, by their later page of mappings to linear temporal logic
(matthewbdwyer.github.io/psp/patterns/ltl.html, read). P is what the rule is of, S what must come
before or after it, Q opens the scope and R closes it. Bounded existence differs on purpose: there
the published formula counts how often P *begins*, here every moment of P counts, as Declare does.

Patterns without scope: Declare (Di Ciccio and Montali, "Declarative process specifications",
Process Mining Handbook, 2022, chapter 4).
"""

from __future__ import annotations

from functools import lru_cache

from chamberwise.engine.model.rule import Extent, Pattern
from chamberwise.engine.patterns.formula import (
    Atom,
    Formula,
    Next,
    Until,
    WeakNext,
    WeakUntil,
    always,
    some_time,
)

P, Q, R, S = Atom("P"), Atom("Q"), Atom("R"), Atom("S")

_OPEN = Q & ~R
_CLOSED_LATER = Q & ~R & some_time(R)

SCOPED: dict[Pattern, dict[Extent, Formula]] = {
    Pattern.ABSENCE: {
        Extent.GLOBALLY: always(~P),
        Extent.BEFORE: some_time(R) >> Until(~P, R),
        Extent.AFTER: always(Q >> always(~P)),
        Extent.BETWEEN: always(_CLOSED_LATER >> Until(~P, R)),
        Extent.AFTER_UNTIL: always(_OPEN >> WeakUntil(~P, R)),
    },
    Pattern.UNIVERSALITY: {
        Extent.GLOBALLY: always(P),
        Extent.BEFORE: some_time(R) >> Until(P, R),
        Extent.AFTER: always(Q >> always(P)),
        Extent.BETWEEN: always(_CLOSED_LATER >> Until(P, R)),
        Extent.AFTER_UNTIL: always(_OPEN >> WeakUntil(P, R)),
    },
    Pattern.EXISTENCE: {
        Extent.GLOBALLY: some_time(P),
        Extent.BEFORE: WeakUntil(~R, P & ~R),
        Extent.AFTER: always(~Q) | some_time(Q & some_time(P)),
        Extent.BETWEEN: always(_OPEN >> WeakUntil(~R, P & ~R)),
        Extent.AFTER_UNTIL: always(_OPEN >> Until(~R, P & ~R)),
    },
    Pattern.PRECEDENCE: {
        Extent.GLOBALLY: WeakUntil(~P, S),
        Extent.BEFORE: some_time(R) >> Until(~P, S | R),
        Extent.AFTER: always(~Q) | some_time(Q & WeakUntil(~P, S)),
        Extent.BETWEEN: always(_CLOSED_LATER >> Until(~P, S | R)),
        Extent.AFTER_UNTIL: always(_OPEN >> WeakUntil(~P, S | R)),
    },
    Pattern.RESPONSE: {
        Extent.GLOBALLY: always(P >> some_time(S)),
        Extent.BEFORE: some_time(R) >> Until(P >> Until(~R, S & ~R), R),
        Extent.AFTER: always(Q >> always(P >> some_time(S))),
        Extent.BETWEEN: always(_CLOSED_LATER >> Until(P >> Until(~R, S & ~R), R)),
        Extent.AFTER_UNTIL: always(_OPEN >> WeakUntil(P >> Until(~R, S & ~R), R)),
    },
}

UNSCOPED: dict[Pattern, Formula] = {
    Pattern.ALTERNATE_PRECEDENCE: WeakUntil(~P, S) & always(P >> WeakNext(WeakUntil(~P, S))),
    Pattern.CHAIN_PRECEDENCE: ~P & always(Next(P) >> S),
    Pattern.CHAIN_RESPONSE: always(P >> Next(S)),
    Pattern.RESPONDED_EXISTENCE: some_time(P) >> some_time(S),
    Pattern.NOT_CO_EXISTENCE: ~(some_time(P) & some_time(S)),
}


@lru_cache(maxsize=256)
def formula_of(pattern: Pattern, extent: Extent = Extent.GLOBALLY, times: int = 0) -> Formula:
    """Return what a pattern means in a scope. Raises `KeyError` where it takes no such scope."""
    if pattern in UNSCOPED and extent is Extent.GLOBALLY:
        return UNSCOPED[pattern]
    if pattern is Pattern.BOUNDED_EXISTENCE:
        return _bounded(extent, times)
    return SCOPED[pattern][extent]


def _bounded(extent: Extent, times: int) -> Formula:
    """Return "P at most so many times" in a scope, counting every moment of P."""
    weakly = _at_most_to_the_end(times)
    up_to_close = _at_most_until_close(times, Until)
    match extent:
        case Extent.GLOBALLY:
            return weakly
        case Extent.BEFORE:
            return some_time(R) >> up_to_close
        case Extent.AFTER:
            return always(~Q) | Until(~Q, Q & weakly)
        case Extent.BETWEEN:
            return always(_CLOSED_LATER >> up_to_close)
        case Extent.AFTER_UNTIL:
            return always(_OPEN >> _at_most_until_close(times, WeakUntil))


def _at_most_to_the_end(times: int) -> Formula:
    if times == 0:
        return always(~P)
    return WeakUntil(~P, P & WeakNext(_at_most_to_the_end(times - 1)))


def _at_most_until_close(times: int, until: type[Until] | type[WeakUntil]) -> Formula:
    if times == 0:
        return until(~P, R)
    onward = _at_most_until_close(times - 1, until)
    onward = Next(onward) if until is Until else WeakNext(onward)
    return until(~P, R | (P & ~R & onward))
