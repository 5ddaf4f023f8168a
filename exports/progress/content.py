"""What is told of progress, as plain values. Renderers see nothing else."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.language.texts import N_

STANDING = N_(
    "Knowledge and sequence only, not operative skill. Advice, never a verdict: nothing "
    "here ranks anybody, and what is due is not overdue."
)
LOCAL = N_("Kept on this machine alone, without names.")
CANNOT_TELL = N_("cannot tell yet")
SIGNS = (("#", N_("met")), ("+", N_("done, late")), (".", N_("not yet")))
"""A run's sign, readable without colour, and what it stands for."""


@dataclass(frozen=True, slots=True)
class Month:
    """The runs of one month by their signs, those met first, and how many."""

    month: str
    counts: tuple[int, ...]
    """By sign, in the order of `SIGNS`."""


@dataclass(frozen=True, slots=True)
class ActRow:
    """One critical act in the latest runs, each figure already told."""

    act: str
    left_out: str
    helped: str
    median: str


@dataclass(frozen=True, slots=True)
class CoursePlot:
    """A sum over runs, with its parameters and its verdict told."""

    title: str
    parameters: str
    verdict: str
    values: tuple[float, ...]
    limits: tuple[tuple[float, str], ...]


@dataclass(frozen=True, slots=True)
class ProgressContent:
    """All that is told of the runs of one pathway."""

    title: str
    pathway: str
    asked_on: str
    status: str
    """The marks of the pathway, as DRAFT; nothing where it is approved and current."""
    runs: int
    counted: tuple[str, ...]
    strip: str
    """The latest runs, oldest first, one sign each."""
    months: tuple[Month, ...]
    due: tuple[str, ...]
    acts: tuple[ActRow, ...]
    latest: int
    """Of how many runs the acts are told."""
    courses: tuple[CoursePlot, ...]
    current: tuple[str, ...] = ()
    """Whether rehearsal is current, else what it lacks; nothing where no run counts."""
    editions: tuple[str, ...] = ()
    not_met: tuple[str, ...] = ()
    """How much of the pathway was met in drills, and how to see what was not."""
