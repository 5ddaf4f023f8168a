"""Beginning a drill: its scenario, its first entry, and the file it is kept in."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from chamberwise.engine.drill.entries import Began, Milliseconds, Mode
from chamberwise.engine.drill.fold import begin_drill
from chamberwise.engine.drill.generate import drill_library, generate
from chamberwise.engine.drill.scenario import Scenario
from chamberwise.engine.model.library import Library
from chamberwise.engine.reading.drills import Drills, drill_digest
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.store.drill_file import new_drill_path
from chamberwise.tui.rehearsal import Rehearsal, Stopwatch

SEEDS = 10_000
ALONE: tuple[str, ...] = ("surgeon",)


def scenario_of(
    loaded: Loaded, drills: Drills, pathway: str, seed: int, name: str | None = None
) -> Scenario:
    """Return a scenario of a pathway's book. Raises `NoScenarioError`."""
    scenario = _generated(loaded.library, drills, pathway, seed, name)
    if loaded.written is None:
        return scenario
    said = _generated(loaded.written, drills.written or drills, pathway, seed, name)
    return replace(scenario, typed_in=said.library)


def _generated(
    library: Library, drills: Drills, pathway: str, seed: int, name: str | None
) -> Scenario:
    book = drills.books[pathway]
    whole = drill_library(library, drills.truth, book)
    return generate(whole, book, drills.truth, drills.phrases, seed, name)


def lasting(scenario: Scenario, seconds: int | None) -> Scenario:
    """Return a scenario that lasts so many seconds after its first cue."""
    return replace(scenario, lasts=seconds) if seconds else scenario


def rehearse(
    loaded: Loaded,
    drills: Drills,
    scenario: Scenario,
    mode: Mode,
    now: datetime,
    watch: Stopwatch,
    folder: Path | None,
    roles: tuple[str, ...] = ALONE,
    *,
    waits: bool = False,
) -> Rehearsal:
    """Return a drill that has just begun, and keep it in a folder where one is given.

    With `waits` no time goes by until somebody has read the brief.
    """
    pathway = scenario.pathway
    edition = loaded.library.pathways[pathway].edition
    digest = drill_digest(loaded, drills, pathway)
    began = Began(now, scenario.name, scenario.seed, pathway, edition, digest, mode, roles)
    path = new_drill_path(folder, pathway, now) if folder is not None else None
    rehearsal = Rehearsal(begin_drill(scenario, began), watch, path, is_waiting=waits)
    rehearsal.open()
    return rehearsal


def stopwatch(start: Milliseconds = 0, clock: Callable[[], int] = time.monotonic_ns) -> Stopwatch:
    """Return a clock that goes on from a time and never goes back."""
    began = clock()

    def now() -> Milliseconds:
        return (clock() - began) // 1_000_000 + start

    return now
