"""Where a team stands: the step, what is known, the loop counts, and the way back.

A state is a plain value: hashable, comparable, without clock or history.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias

from chamberwise.engine.meaning.layout import Field, layout_of
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import ValueId


class Freshness(StrEnum):
    """What the team knows of a finding now. Neither unknown nor stale ever counts as "no"."""

    KNOWN = "known"
    PARTLY = "partly known"
    STALE = "stale"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class State:
    """The values still possible, and those last seen of findings that went stale."""

    place: Place
    possible: int
    last_seen: int = 0
    entered: tuple[tuple[Place, int], ...] = ()
    way_back: tuple[Place, ...] = ()
    """The handovers to come back to, outermost first."""

    def freshness(self, field: Field) -> Freshness:
        """Return what is known of a finding."""
        if self.last_seen & field.every:
            return Freshness.STALE
        possible = self.possible & field.every
        if possible == field.every:
            return Freshness.UNKNOWN
        return Freshness.PARTLY if possible & (possible - 1) else Freshness.KNOWN

    def values(self, field: Field) -> tuple[ValueId, ...]:
        """Return the values known or, where stale, last seen; all of them where unknown."""
        return field.values(self.last_seen & field.every or self.possible & field.every)

    def times_entered(self, place: Place) -> int:
        """Return how often a bounded step was entered."""
        return next((times for at, times in self.entered if at == place), 0)


@dataclass(frozen=True, slots=True)
class Answered:
    """The move at a question: one of its answers, "cannot tell" among them."""

    answer: str


@dataclass(frozen=True, slots=True)
class Done:
    """The move at an action or a handover: it is done."""


Move: TypeAlias = Answered | Done


def start(library: Library, pathway: PathwayId) -> State:
    """Return the state on opening a pathway: nothing is known but what the unit has chosen.

    The entry is not yet settled: `advance.begin` does that.
    """
    layout = layout_of(library)
    possible = layout.every
    fields = [
        *layout.shared.values(),
        *(each for own in layout.own.values() for each in own.values()),
    ]
    for field in fields:
        choice = field.finding.choice
        chosen = field.bits.get(choice.chosen or "") if choice else None
        if chosen:
            possible = possible & ~field.every | chosen
    return State(Place(pathway, library.pathways[pathway].start), possible)
