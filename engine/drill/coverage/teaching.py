"""Which drill would teach most: the stage at which least is known of how critical acts go.

Of each critical act in each context a share of successes is estimated (Beta, from 1 and 1); one
more run there narrows it by so much on average. What nobody has tried is told least of, so that
this asks for the unknown, not for what somebody fails most.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from chamberwise.engine.drill.measures.proportion import Share
from chamberwise.engine.model.words import ActId

UNTRIED = Share(0, 0)


@dataclass(frozen=True, slots=True)
class Teaching:
    """A context, and by how much one more run in it is expected to narrow what is not known."""

    context: str
    narrows: float


def narrowing(share: Share) -> float:
    """Return by how much one more try narrows the variance of a share, on average.

    Of Beta(a, b) it is the variance over a + b + 1.

    >>> narrowing(Share(0, 0)) == 1 / 36
    True
    """
    a, b = 1 + share.count, 1 + share.of - share.count
    variance = a * b / ((a + b) ** 2 * (a + b + 1))
    return variance / (a + b + 1)


def teaching(
    tallies: Mapping[tuple[ActId, str], Share], contexts: Mapping[str, Sequence[ActId]]
) -> tuple[Teaching, ...]:
    """Return every context with its critical acts weighed, the one that teaches most first.

    Between equals the order given decides.
    """
    found = [
        Teaching(
            context,
            sum(narrowing(tallies.get((act, context), UNTRIED)) for act in acts),
        )
        for context, acts in contexts.items()
    ]
    return tuple(sorted(found, key=lambda each: -each.narrows))
