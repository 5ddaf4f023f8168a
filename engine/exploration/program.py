"""A pathway and all it hands over to, as nodes over integers.

`meaning.advance` is the definition; a property test holds this form to it. A node is one step.
Where a handover comes back, the other pathway is a stretch of its own, explored once for each way
of entering it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from chamberwise.engine.exploration.moves import action_effect, answer_masks, condition_masks
from chamberwise.engine.meaning.layout import Layout, layout_of
from chamberwise.engine.meaning.state import start
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import (
    CANNOT_TELL,
    Action,
    Branch,
    Handover,
    Outcome,
    PathwayId,
    Question,
    Step,
    StepId,
)

DONE = "done"
Next = tuple[str | None, int, int]
"""The move's name (`None` when silent), the node led to, and the bits there."""


def _nowhere(bits: int) -> list[Next]:
    return []


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


@dataclass(slots=True)
class Counter:
    """A bounded step's count: bits above all findings."""

    shift: int
    mask: int
    at_most: int


class Entering:
    """Where an arrow leads once the bounds of the steps on the way are counted."""

    __slots__ = ("chain", "last")

    def __init__(self, program: Program, node: Node, place: Place) -> None:
        self.chain: list[tuple[int, Counter]] = []
        met: set[Place] = set()
        while True:
            self.last = program.node(place)
            if self.last not in node.leads_to:
                node.leads_to.append(self.last)
            bound = program.library.step(place).bound
            if bound is None or place in met:
                return
            met.add(place)
            counter = program.counters[place]
            node.reads |= counter.mask
            self.chain.append((self.last, counter))
            place = Place(place.pathway, bound.after_that)

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

    def node(self, place: Place) -> int:
        """Return the node of a step, making it when it is new."""
        found = self.index.get(place)
        if found is None:
            found = self.index[place] = len(self.nodes)
            self.nodes.append(Node(place, self.library.step(place)))
            self._count(place)
        return found

    def _count(self, place: Place) -> None:
        bound = self.library.step(place).bound
        if bound:
            bits = bound.at_most.bit_length()
            mask = ((1 << bits) - 1) << self.width
            self.counters[place] = Counter(self.width, mask, bound.at_most)
            self.width += bits


def compiled(library: Library, pathway: PathwayId) -> Program:
    """Return the program of a pathway whose names are all defined."""
    layout = layout_of(library)
    program = Program(library, layout, width=layout.every.bit_length())
    first = start(library, pathway)
    program.first_bits = first.possible
    program.node(first.place)
    for place, node in enumerate(program.nodes):  # grows while it is gone through
        _compile(program, place, node)
    return program


def _compile(program: Program, place: int, node: Node) -> None:
    match node.step:
        case Question():
            _question(program, node, node.step)
        case Action():
            _action(program, node, node.step)
        case Branch():
            _branch(program, node, node.step)
        case Handover():
            program.calls[place] = _handover(program, node, node.step)
        case Outcome():
            pass


def _question(program: Program, node: Node, step: Question) -> None:
    asked = program.layout.field(node.place.pathway, step.ask)
    every = node.reads = asked.every
    answers = [
        (answer.id, mask, _to(program, node, answer.go_to))
        for answer, mask in answer_masks(step, asked)
    ]

    def onward(bits: int) -> list[Next]:
        possible = bits & every
        if possible != every:
            for name, mask, enter in answers:
                if name != CANNOT_TELL and not possible & ~mask:
                    return [(None, *enter(bits))]
        rest = bits & ~every
        return [
            (name, *enter(bits if name == CANNOT_TELL else rest | possible & mask))
            for name, mask, enter in answers
            if name == CANNOT_TELL or possible & mask
        ]

    node.onward = onward


def _action(program: Program, node: Node, step: Action) -> None:
    words = program.library.words(node.place.pathway)
    keep, add = action_effect(step, words, program.layout, node.place.pathway)
    node.kills = ~keep | add
    enter = _to(program, node, step.go_to)
    node.onward = lambda bits: [(DONE, *enter(bits & keep | add))]


def _branch(program: Program, node: Node, step: Branch) -> None:
    rows = [
        (
            *condition_masks(row.when, program.layout, node.place.pathway),
            _to(program, node, row.go_to),
        )
        for row in step.rows
    ]
    for _, terms, _ in rows:
        for every, _ in terms:
            node.reads |= every
    otherwise = _to(program, node, step.otherwise) if step.otherwise is not None else None
    not_known = _to(program, node, step.not_known) if step.not_known is not None else None

    def onward(bits: int) -> list[Next]:
        for forbidden, _, enter in rows:
            if not bits & forbidden:
                return [(None, *enter(bits))]
        is_open = any(all(bits & mask for _, mask in terms) for _, terms, _ in rows)
        rest = not_known if is_open else otherwise
        return [(None, *rest(bits))] if rest else []

    node.onward = onward


def _handover(program: Program, node: Node, step: Handover) -> Call:
    there = Place(step.to, program.library.pathways[step.to].start)
    inside = Node(there, node.step)
    enter = Entering(program, inside, there)
    back = {outcome: _to(program, node, target) for outcome, target in step.on_return}
    return Call(step.to, enter, back)


def _to(program: Program, node: Node, target: StepId) -> Entering:
    return Entering(program, node, Place(node.place.pathway, target))
