"""Three gates, one after the other; nothing done well makes up for one that stays shut.

A harm, B critical acts, C time. A compensating percentage lets a harmful run pass (Yudkowsky and
others 2014), so there is none.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from chamberwise.engine.drill.measures.harm import Harmful
from chamberwise.engine.drill.measures.omissions import not_reached, omitted
from chamberwise.engine.drill.measures.prompting import prompted
from chamberwise.engine.drill.measures.times import Timed

LOCAL_TARGET = "local target: placeholder, no published benchmark"


class Result(StrEnum):
    """How a run stands; never more than that of a person."""

    MET = "met in this run"
    LATE = "done, late"
    NOT_YET = "not yet"


@dataclass(frozen=True, slots=True)
class Gates:
    """What kept each gate shut; nothing where it stands open."""

    harm: tuple[Harmful, ...]
    left_out: tuple[Timed, ...]
    not_reached: tuple[Timed, ...]
    prompted: tuple[Timed, ...]
    late: tuple[Timed, ...]

    @property
    def result(self) -> Result:
        """How the run stands."""
        if self.harm or self.left_out or self.not_reached or self.prompted:
            return Result.NOT_YET
        return Result.LATE if self.late else Result.MET


def gates(harms: Sequence[Harmful], acts: Sequence[Timed]) -> Gates:
    """Return the gates of a run."""
    return Gates(
        tuple(each for each in harms if each.is_grave),
        omitted(acts),
        not_reached(acts),
        prompted(acts),
        tuple(each for each in acts if each.is_late),
    )
