"""What happened when, role by role, and where nobody said or did anything for long."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TypeAlias

from chamberwise.engine.drill.entries import (
    Asked,
    Did,
    Looked,
    Milliseconds,
    ReadBack,
    Recognised,
    ReportedDone,
    Wondered,
)
from chamberwise.engine.drill.measures.times import end_of
from chamberwise.engine.drill.run import Run

Said: TypeAlias = Did | Looked | Recognised | Wondered | Asked | ReadBack | ReportedDone
"""What somebody did or said."""

LONG = 8_000
"""A silence is told from so many milliseconds on; a default of this program, no published limit."""


@dataclass(frozen=True, slots=True)
class Row:
    """What one role did and said, in order."""

    role: str
    said: tuple[Said, ...]


@dataclass(frozen=True, slots=True)
class Silence:
    """From when to when nobody did or said anything."""

    since: Milliseconds
    until: Milliseconds


def rows(run: Run) -> tuple[Row, ...]:
    """Return one row for each role: those named at the start first, then by first appearance."""
    by_role: dict[str, list[Said]] = {role: [] for role in run.began.roles}
    for entry in run.entries:
        if isinstance(entry, Said):
            by_role.setdefault(entry.who, []).append(entry)
    return tuple(Row(role, tuple(said)) for role, said in by_role.items())


def silences(run: Run) -> tuple[Silence, ...]:
    """Return the long silences from the first cue to the end."""
    since = run.first_cue or 0
    heard = [since, *(each.at for each in run.entries if isinstance(each, Said)), end_of(run)]
    pairs = pairwise(sorted(at for at in heard if at >= since))
    return tuple(Silence(before, then) for before, then in pairs if then - before > LONG)
