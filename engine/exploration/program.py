"""A pathway and all it hands over to, as nodes over integers.

`meaning.advance` is the definition; a property test holds this form to it. A node is one step.
Where a handover comes back, the other pathway is a stretch of its own, explored once for each way
of entering it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

from chamberwise.engine.exploration.moves import Effect, Terms
from chamberwise.engine.meaning.layout import Layout
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import (
    Bound,
    PathwayId,
    Step,
    StepId,
)
from chamberwise.engine.model.words import ValueId

DONE = "done"
Next = tuple[str | None, int, int]
"""The move's name (`None` when silent), the node led to, and the bits there."""


def _nowhere(bits: int) -> list[Next]:
    return []


Way: TypeAlias = "tuple[str, int, int, int, Entering]"
"""A move's name, the bits of which one must be possible (0: none need be), and `keep` and `add`:

it makes `bits & keep | add` of the bits before it enters what follows.
"""


@dataclass(frozen=True, slots=True)
class Door:
    """The two ways at a bounded step: in, while its count allows, or past it to its exit.

    Without a counter both are open: where exits lead round to the step again, its own count does
    not tell.
    """

    inside: int
    past: int
    counter: Counter | None


@dataclass(slots=True)
class Node:
    """One step. `reads` are the bits it looks at, `kills` those it overwrites in any case."""

    place: Place
    step: Step
    reads: int = 0
    kills: int = 0
    leads_to: list[int] = field(default_factory=list)
    onward: Callable[[int], list[Next]] = _nowhere
    live: int = -1
    is_door: bool = False
    asked: int = 0
    """The bits of the finding that a question asks."""
    ways: tuple[Way, ...] = ()
    """The moves, where they hang on nothing but the bits."""
    rows: tuple[tuple[int, Terms, Entering], ...] = ()
    """Of a branch the bits that must be gone, the terms, and where it leads."""
    otherwise: Entering | None = None
    not_known: Entering | None = None
    narrowing: tuple[Effect, Entering] | None = None
    """Of an action whose doings hang on what is known: what it does, and where it leads."""
    door: Door | None = None


@dataclass(slots=True)
class Counter:
    """A bounded step's count: bits above all findings."""

    shift: int
    mask: int
    at_most: int


class Entering:
    """Where an arrow leads once the bounds of the steps on the way are counted.

    Where bounds are doors, a bounded step is entered through its door, and there is no chain.
    """

    __slots__ = ("chain", "last", "leads_to", "reads")

    def __init__(self, last: int, chain: Sequence[tuple[int, Counter]] = ()) -> None:
        self.last = last
        self.chain = chain
        self.leads_to = [last]
        self.reads = 0
        if chain:
            self.leads_to = [*(node for node, _ in chain), last]
            self.reads = sum(counter.mask for _, counter in chain)

    def __call__(self, bits: int) -> tuple[int, int]:
        """Return the node come to, and the bits there with the entry counted."""
        for node, counter in self.chain:
            if (bits & counter.mask) >> counter.shift < counter.at_most:
                return node, bits + (1 << counter.shift)
        return self.last, bits


@dataclass(slots=True)
class Call:
    """A handover: the way in over there and, by outcome, the way back."""

    pathway: PathwayId
    enter: Entering
    back: dict[StepId, Entering]


@dataclass(slots=True)
class Program:
    """All nodes a pathway can come to, its entry first, and the bits at the start."""

    library: Library
    layout: Layout
    nodes: list[Node] = field(default_factory=list)
    index: dict[Place, int] = field(default_factory=dict)
    calls: dict[int, Call] = field(default_factory=dict)
    counters: dict[Place, Counter] = field(default_factory=dict)
    width: int = 0
    first_bits: int = 0
    tracked: dict[int, int] = field(default_factory=dict)
    """By the bits of a finding, the bit that is set while it is stale, for those asked for."""
    by_doors: bool = False
    """Whether every bounded step is entered through a door, where its count is looked at or not."""
    counted: frozenset[Place] = frozenset()
    """Bounded steps that have no door all the same."""
    doors: dict[Place, int] = field(default_factory=dict)
    entering: dict[tuple[PathwayId, StepId], Entering] = field(default_factory=dict)
    masks: dict[tuple[int, tuple[ValueId, ...]], int] = field(default_factory=dict)
    effects: dict[tuple[object, ...], Effect] = field(default_factory=dict)
    """What was worked out once: by step led to, by bits of a finding and values, by doings."""

    def node(self, place: Place) -> int:
        """Return the node of a step, making it when it is new."""
        found = self.index.get(place)
        if found is None:
            found = self.index[place] = len(self.nodes)
            step = self.library.step(place)
            self.nodes.append(Node(place, step))
        return found

    def door(self, place: Place) -> int:
        """Return the node at which a walk either enters a bounded step or goes past it."""
        found = self.doors.get(place)
        if found is None:
            found = self.doors[place] = len(self.nodes)
            step = self.library.step(place)
            self.nodes.append(Node(place, step, is_door=True))
        return found

    def enter(self, place: Place) -> Entering:
        """Return what entering a step comes to, by its bound and the bounds of its exits."""
        chain: list[tuple[int, Counter]] = []
        met: set[Place] = set()
        while True:
            bound = self.library.step(place).bound
            if bound is not None and self.by_doors and place not in self.counted:
                return Entering(self.door(place), chain)
            node = self.node(place)
            if bound is None or place in met:
                return Entering(node, chain)
            met.add(place)
            chain.append((node, self.counters[place]))
            place = Place(place.pathway, bound.after_that)

    def counts(self, pathway: PathwayId) -> int:
        """Return the bits of the counts of a pathway's bounded steps."""
        counters = self.counters.items()
        return sum(counter.mask for place, counter in counters if place.pathway == pathway)

    def count(self, place: Place, bound: Bound) -> None:
        """Give a bounded step bits to be counted in."""
        bits = bound.at_most.bit_length()
        mask = ((1 << bits) - 1) << self.width
        self.counters[place] = Counter(self.width, mask, bound.at_most)
        self.width += bits
