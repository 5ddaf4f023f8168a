"""A cumulative sum that begins at "not yet" and signals once it is shown otherwise.

LC-CUSUM (Biau and others, Statistics in Medicine 2008 and 2010): it never falls below nothing, so
that a bad beginning is not held against anybody for ever.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil, log


@dataclass(frozen=True, slots=True)
class LcCusum:
    """An acceptable and an unacceptable rate of failure, and the sum that signals."""

    acceptable: float
    unacceptable: float
    signal: float

    @property
    def success(self) -> float:
        """What a success adds."""
        return log((1 - self.acceptable) / (1 - self.unacceptable))

    @property
    def failure(self) -> float:
        """What a failure takes off; negative."""
        return log(self.acceptable / self.unacceptable)

    def sums(self, failed: Iterable[bool]) -> tuple[float, ...]:
        """Return the sum after each run, up to the one at which it signals."""
        total, found = 0.0, list[float]()
        for each in failed:
            total = max(0.0, total + (self.failure if each else self.success))
            found.append(total)
            if self.signals(total):
                break
        return tuple(found)

    def signals(self, total: float) -> bool:
        """Whether a sum signals."""
        return total >= self.signal

    def more_needed(self, total: float) -> int:
        """Return how many successes in a row would make a sum signal."""
        return max(0, ceil((self.signal - total) / self.success))


USUAL = LcCusum(acceptable=0.10, unacceptable=0.30, signal=2.5)
"""For drills: ten successes in a row. This program's choice."""
