"""Whether what was rehearsed is still fresh: by the latest runs, by their date, and by recall.

The rule is this program's own, from the evidence notes of the drill: the last two runs met, with
different seeds, one of them with something happening meanwhile, the latest within 90 days. It says
what to rehearse, never what anybody can do.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from chamberwise.engine.drill.measures.gates import Result
from chamberwise.engine.drill.remembering.remembered import Remembered
from chamberwise.engine.drill.spacing.scheduling import Memory, recall

RUNS = 2
FRESH = timedelta(days=90)
RECALL = 0.9
"""The chance of recall below which an act is no longer fresh; chosen here, no published limit."""


class Lack(StrEnum):
    """What keeps rehearsal from being current."""

    RUNS = "fewer than two runs that count"
    MET = "the last two runs were not both met"
    SEEDS = "the last two runs were of the same drill"
    INJECT = "in neither of the last two did anything happen meanwhile"
    AGE = "the latest run is more than 90 days ago"
    RECALL = "something is likely to be forgotten"


@dataclass(frozen=True, slots=True)
class Current:
    """How fresh rehearsal is; current where nothing is lacking."""

    lacks: tuple[Lack, ...]
    latest: datetime | None
    weakest: Memory | None
    """The act most likely to be forgotten now."""


def current(
    latest: Sequence[Remembered], with_injects: int, memories: Sequence[Memory], now: datetime
) -> Current:
    """Return how fresh rehearsal is.

    `latest` are runs that count, oldest first; `with_injects` of the last two had an inject.
    """
    weakest = min(memories, key=lambda each: (recall(each, now), each.act), default=None)
    last = latest[-RUNS:]
    if len(last) < RUNS:
        return Current((Lack.RUNS,), last[-1].on if last else None, weakest)
    is_lacking = {
        Lack.MET: any(each.result is not Result.MET for each in last),
        Lack.SEEDS: len({(each.scenario, each.seed) for each in last}) < RUNS,
        Lack.INJECT: not with_injects,
        Lack.AGE: now - last[-1].on > FRESH,
        Lack.RECALL: weakest is not None and recall(weakest, now) < RECALL,
    }
    return Current(tuple(lack for lack, is_so in is_lacking.items() if is_so), last[-1].on, weakest)
