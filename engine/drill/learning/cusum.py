"""A cumulative sum of failures that shows an acceptable or an unacceptable rate.

In the form of a sequential probability ratio test, as used for the learning of procedures
(Kestin 1995): each success takes `step` off, each failure adds 1 less `step`.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil, log


@dataclass(frozen=True, slots=True)
class Cusum:
    """An acceptable and an unacceptable rate of failure, and the errors of the first and second

    kind: of calling an acceptable rate unacceptable, and the other way round.
    """

    acceptable: float
    unacceptable: float
    first_kind: float
    second_kind: float

    @property
    def _failing(self) -> float:
        return log(self.unacceptable / self.acceptable)

    @property
    def _succeeding(self) -> float:
        return log((1 - self.acceptable) / (1 - self.unacceptable))

    @property
    def step(self) -> float:
        """What a success takes off."""
        return self._succeeding / (self._failing + self._succeeding)

    @property
    def shown_acceptable(self) -> float:
        """How far down the sum has to come."""
        whole = self._failing + self._succeeding
        return -log((1 - self.first_kind) / self.second_kind) / whole

    @property
    def shown_unacceptable(self) -> float:
        """How far up the sum has to come."""
        return log((1 - self.second_kind) / self.first_kind) / (self._failing + self._succeeding)

    @property
    def straight(self) -> int:
        """How many successes in a row show an acceptable rate."""
        return ceil(-self.shown_acceptable / self.step)

    def sums(self, failed: Iterable[bool]) -> tuple[float, ...]:
        """Return the sum after each run; once a limit is met it begins anew."""
        total, found = 0.0, list[float]()
        for each in failed:
            if self.is_over(total):
                total = 0.0
            total += (1 - self.step) if each else -self.step
            found.append(total)
        return tuple(found)

    def is_over(self, total: float) -> bool:
        """Whether a sum is at or past one of the limits."""
        return total <= self.shown_acceptable or total >= self.shown_unacceptable


USUAL = Cusum(acceptable=0.10, unacceptable=0.30, first_kind=0.10, second_kind=0.10)
"""For drills, where a run fails whose gates do not all open: this program's choice."""
