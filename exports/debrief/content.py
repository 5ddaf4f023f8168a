"""What a debrief says, as plain values. Renderers see nothing else."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.language.texts import N_

STANDING = N_("Knowledge and sequence only, not operative skill. Rehearsal, never live care.")
FOLLOW = N_("Follow local protocol.")
PLACEHOLDER = N_("Times are local targets: placeholders, no published benchmark.")
MARKED = N_("A run is never a mark: one run says little, and nothing here ranks anybody.")


@dataclass(frozen=True, slots=True)
class Gate:
    """One gate: what it asks, how it stands, and what kept it shut or what is to be said of it."""

    letter: str
    asks: str
    stands: str
    because: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class RoleRow:
    """One role's doings, each with its time in front."""

    role: str
    said: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FirstDeparture:
    """The first departure: what was shown and done, the pathway's line, why, and its source."""

    at: str
    shown: str
    done: str
    line: str
    why: str
    sources: tuple[str, ...]


FIRST_THAT_MATTERS = N_("First departure that matters")
FIRST_LESSER = N_("First departure, a lesser one")


@dataclass(frozen=True, slots=True)
class LoopRow:
    """One request, of whom, and when it was read back and reported done, `not` where it was not."""

    request: str
    of: str
    asked: str
    read_back: str
    done: str


@dataclass(frozen=True, slots=True)
class Figure:
    """One measure: a count of so many with its limits, or a time."""

    what: str
    told: str


@dataclass(frozen=True, slots=True)
class DebriefContent:
    """The whole of a debrief."""

    title: str
    head: tuple[tuple[str, str], ...]
    result: str
    gates: tuple[Gate, ...]
    talking: tuple[str, ...]
    """At most three."""
    sure_and_wrong: tuple[str, ...]
    rows: tuple[RoleRow, ...]
    silences: tuple[str, ...]
    first_departure: FirstDeparture | None
    first_title: str
    """Whether the first departure told is one that matters, as a heading."""
    departures: tuple[str, ...]
    """The others that matter."""
    lesser: tuple[str, ...]
    """Those that are neither of a critical act nor of a grave rule."""
    chain: tuple[str, ...]
    loops: tuple[LoopRow, ...]
    figures: tuple[Figure, ...]
    questions: tuple[str, ...]
    system: tuple[str, ...]
    take_away: str
    next_due: str
