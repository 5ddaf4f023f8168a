"""Critical acts that were left out, of those that applied."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.drill.measures.proportion import Share
from chamberwise.engine.drill.measures.times import Timed


def omitted(acts: Sequence[Timed]) -> tuple[Timed, ...]:
    """Return the critical acts that applied and were not done."""
    return tuple(each for each in acts if each.applies and each.done is None)


def omission(acts: Sequence[Timed]) -> Share:
    """Return how many were left out of how many that applied."""
    return Share(len(omitted(acts)), sum(each.applies for each in acts))
