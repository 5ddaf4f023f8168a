"""From the store of runs to what is known of somebody's progress."""

from __future__ import annotations

from datetime import datetime

from chamberwise.engine.drill.remembering.current import RUNS, current
from chamberwise.engine.drill.remembering.progress import LATEST, Progress
from chamberwise.engine.drill.spacing.due import due
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.store.runs import Runs


def progress_of(runs: Runs, pathway: PathwayId, now: datetime) -> Progress:
    """Return what is known of the runs of a pathway. Raises `RunsError`."""
    latest = tuple(each for each in runs.latest(pathway, LATEST) if each.counts)
    memories = runs.memories(pathway)
    return Progress(
        pathway,
        runs.results(pathway),
        runs.by_month(pathway),
        latest,
        due(memories, now),
        now,
        runs.met(pathway),
        runs.editions(pathway),
        current(latest, runs.with_injects(pathway, RUNS), memories, now),
    )
