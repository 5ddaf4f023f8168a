"""The measure: every mutant of a pathway against checks and rules, over several processes."""

from __future__ import annotations

import os
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from enum import Enum
from itertools import islice
from multiprocessing import get_context
from typing import TypeAlias

from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.mutants.all_mutants import mutants
from chamberwise.engine.mutants.killing import (
    Bench,
    Broken,
    Effort,
    bench_for,
    broken_already,
    killed_by,
    looks_the_same,
)
from chamberwise.engine.mutants.mutant import Mutant
from chamberwise.engine.mutants.strength import OfKind, Strength, Survivor
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.reading.reviewed import ReviewedList, reviewed_of

AT_ONCE = 8
"""How many mutants a process is given at a time."""

FEW = 40
"""So few that other processes would not be worth starting."""


class Alive(Enum):
    """How a mutant lives: told from the original by nothing, or by nobody."""

    SURVIVES = "survives"
    SAME = "same"


Fate: TypeAlias = "str | Alive"
"""What killed a mutant, or how it lives."""


@dataclass(frozen=True, slots=True)
class _Task:
    """All that a process has to know to do its part; it makes the mutants anew."""

    loaded: Loaded
    pathway: PathwayId
    every: int
    thoroughly: bool
    broken: Broken
    reviewed: ReviewedList

    def made(self) -> list[Mutant]:
        return list(islice(mutants(self.loaded.library, self.pathway), 0, None, self.every))

    def bench(self) -> Bench:
        return bench_for(self.loaded, self.pathway, self.broken)

    def fate(self, bench: Bench, mutant: Mutant) -> Fate:
        """What is expected to survive is only glanced at."""
        is_reviewed = self.reviewed.reason(mutant.id) is not None
        effort = Effort.GLANCE if is_reviewed and not self.thoroughly else Effort.PROOF
        killer = killed_by(bench, mutant, effort)
        if killer is not None:
            return killer
        return Alive.SAME if looks_the_same(bench, mutant) else Alive.SURVIVES


def measure(
    loaded: Loaded,
    pathway: PathwayId,
    *,
    every: int = 1,
    workers: int | None = None,
    told: Callable[[int, int], None] | None = None,
    thoroughly: bool = False,
    broken: Broken | None = None,
) -> Strength:
    """Return how strong checks and rules are over a pathway that can be walked.

    `every` takes each so-manieth mutant; `workers` is the number of processes, by default one a
    core; `told` hears how many mutants are done and how many there are. Of a survivor that
    nobody reviewed it is proved that no walk breaks a rule; with `thoroughly` of the reviewed ones
    as well. `broken` are the rules that the original breaks, proved
    first where left out. The result is the same whatever the number of workers.
    """
    if broken is None:
        broken = broken_already(loaded.library, pathway)
    reviewed = reviewed_of(loaded.file_of[pathway], pathway)
    task = _Task(loaded, pathway, every, thoroughly, broken, reviewed)
    made = task.made()
    fates: list[Fate] = []
    for fate in _fates(task, made, workers or os.cpu_count() or 1):
        fates.append(fate)
        if told is not None:
            told(len(fates), len(made))
    return _strength(pathway, made, fates, reviewed, whole=every == 1)


def _fates(task: _Task, made: Sequence[Mutant], workers: int) -> Iterator[Fate]:
    """Yield, in the order of the mutants, what became of each."""
    if workers == 1 or len(made) <= FEW:
        bench = task.bench()
        yield from (task.fate(bench, mutant) for mutant in made)
        return
    spawning = get_context("spawn")
    with ProcessPoolExecutor(workers, spawning, initializer=_begin, initargs=(task,)) as pool:
        yield from pool.map(_of_worker, range(len(made)), chunksize=AT_ONCE)


_OF_WORKER: list[tuple[_Task, Bench, list[Mutant]]] = []
"""In a process of its own: its task, what the mutants are held against, and they themselves."""


def _begin(task: _Task) -> None:
    _OF_WORKER[:] = [(task, task.bench(), task.made())]


def _of_worker(number: int) -> Fate:
    task, bench, made = _OF_WORKER[0]
    return task.fate(bench, made[number])


def _strength(
    pathway: PathwayId,
    made: Sequence[Mutant],
    fates: Sequence[Fate],
    reviewed: ReviewedList,
    *,
    whole: bool,
) -> Strength:
    of_kind = Counter(mutant.kind for mutant in made)
    pairs = list(zip(made, fates, strict=True))
    killed = Counter(mutant.kind for mutant, fate in pairs if isinstance(fate, str))
    same = Counter(mutant.kind for mutant, fate in pairs if fate is Alive.SAME)
    by = Counter(fate for fate in fates if isinstance(fate, str))
    survivors = tuple(
        Survivor(each.id, each.kind, each.description, reviewed.reason(each.id))
        for each, fate in pairs
        if fate is Alive.SURVIVES
    )
    stale = tuple(
        entry.edit
        for entry in reviewed.entries
        if whole and not any(entry.covers(each.id) for each in survivors)
    )
    return Strength(
        pathway,
        len(made),
        tuple(OfKind(kind, count, killed[kind], same[kind]) for kind, count in of_kind.items()),
        dict(sorted(by.items(), key=lambda each: (-each[1], each[0]))),
        survivors,
        stale,
        reviewed.problems,
    )
