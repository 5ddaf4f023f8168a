"""How soon the trigger was said and each critical act done, in seconds; None where never asked.

What had not happened when the drill ended is censored there. An interrupted run has no times.
"""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.drill.entries import Did, Milliseconds, Resumed
from chamberwise.engine.drill.measures.surviving import Duration
from chamberwise.engine.drill.run import Run
from chamberwise.engine.model.drill import CriticalAct
from chamberwise.engine.model.words import ActId


@dataclass(frozen=True, slots=True)
class Timed:
    """A critical act, when it was first done if it was, and how long that took.

    Not applicable (`duration` None) where what it should follow was never done, or where the clock
    says nothing.
    """

    critical: CriticalAct
    done: Did | None
    duration: Duration | None
    applies: bool
    is_reached: bool = True
    """Whether it was done or its turn had come before the drill ended."""

    @property
    def was_due(self) -> bool:
        """Whether anything can be said of it: it applied, and its turn had come."""
        return self.applies and self.is_reached

    @property
    def is_late(self) -> bool:
        """Whether it was done later than the local hard limit."""
        hard = self.critical.hard
        if self.done is None or hard is None or self.duration is None:
            return False
        return self.duration.seconds > hard


def recognition(run: Run) -> Duration | None:
    """Return how long after the first cue the trigger was said."""
    if run.first_cue is None or was_interrupted(run):
        return None
    said = run.recognised
    at = said.at if said else end_of(run)
    return Duration((at - run.first_cue) / 1000, said is not None)


def times(run: Run) -> tuple[Timed, ...]:
    """Return each critical act of the run with its time."""
    return tuple(_timed(run, critical) for critical in run.critical)


def _timed(run: Run, critical: CriticalAct) -> Timed:
    since = run.first_cue
    if critical.once is not None:
        before = first_done(run, critical.once)
        if before is None:
            return Timed(critical, first_done(run, critical.act), None, applies=False)
        since = before.at
    done = first_done(run, critical.act, since if critical.once is not None else None)
    if since is None or was_interrupted(run):
        return Timed(critical, done, None, True, done is not None or _had_come(run, critical))
    at = done.at if done else end_of(run)
    took = Duration(max(0, at - since) / 1000, done is not None)
    window = critical.hard or critical.soft
    was_over = window is not None and took.seconds >= window
    is_reached = done is not None or was_over or _had_come(run, critical)
    return Timed(critical, done, took, True, is_reached)


def _had_come(run: Run, critical: CriticalAct) -> bool:
    """Whether the turn of an act had come: by the pathway, or by what it belongs before."""
    if run.came_to is None or critical.act in run.came_to:
        return True
    then = [order.then for order in run.orders if order.is_hard and order.first == critical.act]
    return any(first_done(run, each) is not None for each in then)


def first_done(run: Run, act: ActId, since: Milliseconds | None = None) -> Did | None:
    """Return when an act was first done, or first done since some time."""
    for event in run.events:
        entry = event.entry
        if isinstance(entry, Did) and entry.act == act and (since is None or entry.at >= since):
            return entry
    return None


def was_interrupted(run: Run) -> bool:
    """Whether the drill was taken up again after an interruption."""
    return any(isinstance(entry, Resumed) for entry in run.entries)


def end_of(run: Run) -> Milliseconds:
    """Return when the drill ended, or when anything was last written down."""
    return run.ended.at if run.ended else max((entry.at for entry in run.entries), default=0)
