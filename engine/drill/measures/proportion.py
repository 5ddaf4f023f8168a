"""A share of so many, and how little it says where there were few.

Exact limits as Clopper and Pearson (1934), limits by score as Wilson (1927).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import exp, lgamma, log, log1p, sqrt
from statistics import NormalDist

ALPHA = 0.05
WIDE = 0.4
"""From this width on an interval says too little to be told as anything but "cannot tell yet"."""

_HALVINGS = 60
_MOST_TERMS = 2000
_CLOSE = 1e-15
_NOTHING = 1e-300


@dataclass(frozen=True, slots=True)
class Interval:
    """From `low` to `high`, both from 0 to 1."""

    low: float
    high: float

    @property
    def width(self) -> float:
        """How far apart they are."""
        return self.high - self.low


@dataclass(frozen=True, slots=True)
class Share:
    """So many `of` so many."""

    count: int
    of: int

    @property
    def exact(self) -> Interval:
        """The exact interval of 95 %; everything where there were none."""
        return clopper_pearson(self.count, self.of)

    @property
    def tells(self) -> bool:
        """Whether there were enough to say anything."""
        return self.of > 0 and wilson(self.count, self.of).width < WIDE

    @property
    def more_needed(self) -> int:
        """About how many more would be enough, if the share stays as it is."""
        rate = self.count / self.of if self.of else 0.5
        more = 0
        while wilson(rate * (self.of + more), self.of + more).width >= WIDE:
            more += 1
        return more


def wilson(count: float, of: int, alpha: float = ALPHA) -> Interval:
    """Return Wilson's interval of a share."""
    if of == 0:
        return Interval(0.0, 1.0)
    z = NormalDist().inv_cdf(1 - alpha / 2)
    rate = count / of
    middle = (rate + z * z / (2 * of)) / (1 + z * z / of)
    half = z * sqrt(rate * (1 - rate) / of + z * z / (4 * of * of)) / (1 + z * z / of)
    return Interval(max(0.0, middle - half), min(1.0, middle + half))


def clopper_pearson(count: int, of: int, alpha: float = ALPHA) -> Interval:
    """Return the exact interval of a share: limits that the binomial tails leave open."""
    low = 0.0 if count == 0 else _where(lambda p: 1 - at_most(count - 1, of, p) >= alpha / 2)
    high = 1.0 if count == of else _where(lambda p: at_most(count, of, p) <= alpha / 2)
    return Interval(low, high)


def at_most(count: int, of: int, rate: float) -> float:
    """Return the binomial probability of so many or fewer."""
    if count < 0:
        return 0.0
    if count >= of or rate <= 0.0:
        return 1.0
    return 0.0 if rate >= 1.0 else _beta(1 - rate, of - count, count + 1)


def _beta(at: float, a: int, b: int) -> float:
    """Return the regularised incomplete beta function, by its continued fraction.

    Abramowitz and Stegun 26.5.8, turned round (26.5.2) where it converges slowly.
    """
    if at > (a + 1) / (a + b + 2):
        return 1.0 - _beta(1 - at, b, a)
    front = lgamma(a + b) - lgamma(a) - lgamma(b) + a * log(at) + b * log1p(-at)
    return exp(front) / a * _fraction(at, a, b)


def _fraction(at: float, a: int, b: int) -> float:
    """Return the continued fraction, from the front, by the method of Lentz."""
    over, under = 1.0, _not_nothing(1.0 - (a + b) * at / (a + 1))
    under = 1.0 / under
    whole = under
    for term in range(1, _MOST_TERMS):
        for share in _shares(at, a, b, term):
            under = 1.0 / _not_nothing(1.0 + share * under)
            over = _not_nothing(1.0 + share / over)
            whole *= under * over
        if abs(under * over - 1.0) < _CLOSE:
            break
    return whole


def _shares(at: float, a: int, b: int, term: int) -> tuple[float, float]:
    double = 2 * term
    even = term * (b - term) * at / ((a + double - 1) * (a + double))
    odd = -(a + term) * (a + b + term) * at / ((a + double) * (a + double + 1))
    return even, odd


def _not_nothing(value: float) -> float:
    return value if abs(value) > _NOTHING else _NOTHING


def _where(is_past: Callable[[float], bool]) -> float:
    """Return where, going from 0 to 1, something comes to be true."""
    low, high = 0.0, 1.0
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (low, middle) if is_past(middle) else (middle, high)
    return (low + high) / 2
