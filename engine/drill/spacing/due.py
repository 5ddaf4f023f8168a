"""What is due now: the few acts most likely to be forgotten, and a warm-up after a break."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from chamberwise.engine.drill.spacing.scheduling import AT_ONCE, BREAK, Memory, recall


@dataclass(frozen=True, slots=True)
class Due:
    """The acts due now, the most perishable first, how many more are, and what comes next."""

    now: tuple[Memory, ...]
    more: int
    next_on: datetime | None
    warm_up: bool


def due(memories: Iterable[Memory], now: datetime) -> Due:
    """Return what is due. Nothing is said of who should have done what by when."""
    known = list(memories)
    ripe = [each for each in known if each.due <= now]
    ripe.sort(key=lambda each: (recall(each, now), each.due, each.act, each.context))
    later = [each.due for each in known if each.due > now]
    last = max((each.last for each in known), default=None)
    return Due(
        tuple(ripe[:AT_ONCE]),
        max(0, len(ripe) - AT_ONCE),
        min(later, default=None),
        warm_up=last is not None and now - last >= BREAK,
    )
