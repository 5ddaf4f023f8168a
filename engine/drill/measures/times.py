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
        return Timed(critical, done, None, applies=True)
    at = done.at if done else end_of(run)
    took = Duration(max(0, at - since) / 1000, done is not None)
    return Timed(critical, done, took, applies=True)


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
