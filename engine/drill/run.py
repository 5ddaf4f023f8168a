"""What a drill's journal folds to: what was done in order, and what was true each time."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TypeAlias

from chamberwise.engine.drill.entries import (
    Began,
    Did,
    Ended,
    Ending,
    Entry,
    Looked,
    Milliseconds,
    Mode,
    Recognised,
    Resumed,
)
from chamberwise.engine.meaning.moments import Moment
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.drill import CriticalAct, Order
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.words import ActId, FindingId, ValueId

Truth: TypeAlias = Mapping[FindingId, ValueId]
"""What is really so, whether or not anybody has seen it: one value for every finding."""


@dataclass(frozen=True, slots=True)
class Event:
    """One act or look that stands (not rewound), with what was true just before it.

    `possible` and `last_seen` are what the team knew just before it, as bits of the layout.
    """

    entry: Did | Looked
    number: int
    """Its place in the journal, from 0."""
    truth: Truth
    possible: int
    last_seen: int
    sign: str = ""
    """Of a look: how what was seen showed itself; nothing where it could not be told."""


@dataclass(frozen=True, slots=True)
class Consequence:
    """What an act led to that the right one would not have: told at the debrief, not marked."""

    by: int
    """The number of the journal entry that led to it."""
    act: ActId
    cue: str
    changed: tuple[tuple[FindingId, ValueId], ...]
    lesson: str


@dataclass(frozen=True, slots=True)
class Run:
    """A drill as it stands. `entries` are those not rewound, oldest first."""

    journal: tuple[Entry, ...]
    began: Began
    entries: tuple[Entry, ...]
    events: tuple[Event, ...]
    consequences: tuple[Consequence, ...]
    critical: tuple[CriticalAct, ...]
    orders: tuple[Order, ...]
    first_cue: Milliseconds | None
    recognised: Recognised | None
    ended: Ended | None
    first: State | None = None
    """Where in the pathway the drill began, with what the brief had told; else at its entry."""
    so_far: tuple[Moment, ...] = ()
    """What had happened before the drill began, as safety rules look at it."""
    at_a_glance: tuple[FindingId, ...] = ()
    """What is seen without looking, so that nobody has to look before an act."""
    came_to: frozenset[ActId] | None = None
    """The acts whose turn had come before the drill ended; None for every act."""
    rules: tuple[Rule, ...] = ()
    """Rules that bind drills beside the pathway's own: what is never right."""
    counts_as: Mapping[ActId, ActId] = field(default_factory=dict)
    """By an act that drills alone know, the act that safety rules take it for."""
    injects: Mapping[str, str] = field(default_factory=dict)
    """By what may have happened meanwhile, its title."""

    @property
    def counts(self) -> bool:
        """Whether it may be counted: a run, not a rehearsal, and come to an end by itself."""
        return (
            self.began.mode is Mode.RUN
            and self.ended is not None
            and self.ended.how is not Ending.INTERRUPTED
            and not any(isinstance(entry, Resumed) for entry in self.entries)
        )
