"""What is known of somebody's runs of one pathway, to be told."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from chamberwise.engine.drill.entries import Level
from chamberwise.engine.drill.learning.course import Course, course
from chamberwise.engine.drill.measures.gates import Result
from chamberwise.engine.drill.measures.proportion import Share
from chamberwise.engine.drill.measures.surviving import Duration
from chamberwise.engine.drill.measures.walked import Answer
from chamberwise.engine.drill.remembering.current import Current
from chamberwise.engine.drill.remembering.remembered import Remembered, RememberedAct
from chamberwise.engine.drill.spacing.due import Due
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import ActId

LATEST = 50
"""What is told act by act is told of so many runs, the latest."""


@dataclass(frozen=True, slots=True)
class ActProgress:
    """How one critical act went in the latest runs."""

    act: ActId
    left_out: Share
    helped: Share
    """Chosen from a menu or told, of those done."""
    times: tuple[Duration, ...]


@dataclass(frozen=True, slots=True)
class Progress:
    """All runs of a pathway that count, in their order, and the latest more closely."""

    pathway: PathwayId
    results: tuple[Result, ...]
    by_month: tuple[tuple[str, Result, int], ...]
    latest: tuple[Remembered, ...]
    """Rehearsals are not among them."""
    due: Due
    asked_on: datetime
    met: frozenset[Answer] = frozenset()
    """The answers that any drill came by."""
    editions: tuple[tuple[str, int], ...] = ()
    """How many runs that count there were of each edition."""
    current: Current | None = None

    @property
    def course(self) -> Course:
        """The course of the runs."""
        return course(self.results)

    @property
    def acts(self) -> tuple[ActProgress, ...]:
        """Each critical act of the latest runs, in the order first met."""
        met: dict[ActId, list[RememberedAct]] = {}
        for run in self.latest:
            for act in run.acts:
                met.setdefault(act.act, []).append(act)
        return tuple(_of_act(name, acts) for name, acts in met.items())


def _of_act(name: ActId, acts: Sequence[RememberedAct]) -> ActProgress:
    done = [each for each in acts if each.level is not None]
    helped = sum(each.level is not None and each.level >= Level.MENU for each in done)
    return ActProgress(
        name,
        Share(len(acts) - len(done), len(acts)),
        Share(helped, len(done)),
        tuple(each.duration for each in acts if each.duration is not None),
    )
