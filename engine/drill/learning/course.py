"""The course of somebody's runs: first towards a signal, then watched for falling back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from chamberwise.engine.drill.learning import cusum, lc_cusum
from chamberwise.engine.drill.measures.gates import Result


@dataclass(frozen=True, slots=True)
class Course:
    """The sums after each run: of the one until it signals, of the other from there on."""

    until: lc_cusum.LcCusum
    then: cusum.Cusum
    towards: tuple[float, ...]
    since: tuple[float, ...]
    has_signalled: bool
    more_needed: int
    """Successes in a row to the signal."""

    @property
    def fell_back(self) -> bool:
        """Whether, since the signal, the last verdict was that of an unacceptable rate."""
        verdicts = [each for each in self.since if self.then.is_over(each)]
        return bool(verdicts) and verdicts[-1] >= self.then.shown_unacceptable


def course(
    results: Sequence[Result],
    until: lc_cusum.LcCusum = lc_cusum.USUAL,
    then: cusum.Cusum = cusum.USUAL,
) -> Course:
    """Return the course of runs, oldest first; a run fails that was not met."""
    failed = [each is not Result.MET for each in results]
    towards = until.sums(failed)
    last = towards[-1] if towards else 0.0
    has_signalled = until.signals(last)
    since = then.sums(failed[len(towards) :]) if has_signalled else ()
    return Course(until, then, towards, since, has_signalled, until.more_needed(last))
