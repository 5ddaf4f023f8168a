"""A pathway and all it hands over to, as nodes over integers. `meaning.advance` is the definition;

a property test holds this form to it. A node is a step together with the handovers to come back to.
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
WayBack = tuple[Place, ...]
Next = tuple[str | None, int, int]
"""The move's name (`None` when silent), the node led to, and the bits there."""


@dataclass(slots=True)
class Node:
    """One step in one context. `reads` are the bits it looks at, `kills` those it overwrites."""

    place: Place
    way_back: WayBack
    step: Step
    reads: int = 0
    kills: int = 0
    leads_to: list[int] = field(default_factory=list)
    onward: Callable[[int], list[Next]] = lambda bits: []
    is_end: bool = False
    live: int = -1


@dataclass(slots=True)
class Counter:
    """A bounded step's count: bits above all findings."""

    shift: int
    mask: int
    at_most: int


@dataclass(slots=True)
class Program:
    """All nodes a pathway can come to, the entry first, and the bits at the start."""

    library: Library
    layout: Layout
    nodes: list[Node] = field(default_factory=list)
    index: dict[tuple[Place, WayBack], int] = field(default_factory=dict)
    counters: dict[Place, Counter] = field(default_factory=dict)
    width: int = 0
    first_bits: int = 0

    def node(self, place: Place, way_back: WayBack) -> int:
        """Return the node of a step in a context, making it when it is new."""
        key = (place, way_back)
        found = self.index.get(key)
        if found is None:
            found = self.index[key] = len(self.nodes)
            self.nodes.append(Node(place, way_back, self.library.step(place)))
            self._count(place)
        return found

    def _count(self, place: Place) -> None:
        bound = self.library.step(place).bound
        if bound and place not in self.counters:
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
    program.node(first.place, ())
    for node in program.nodes:  # grows while it is gone through
        _compile(program, node)
    return program


def _compile(program: Program, node: Node) -> None:
    match node.step:
        case Question():
            _question(program, node, node.step)
        case Action():
            _action(program, node, node.step)
        case Branch():
            _branch(program, node, node.step)
        case Handover():
            _handover(program, node, node.step)
        case Outcome():
            _outcome(program, node)


class _Entering:
    """Where an arrow leads once the bounds of the steps on the way are counted."""

    __slots__ = ("chain", "last")

    def __init__(self, program: Program, node: Node, target: StepId, way_back: WayBack) -> None:
        self.chain: list[tuple[int, Counter]] = []
        met: set[Place] = set()
        while True:
            place = Place(node.place.pathway, target)
            self.last = program.node(place, way_back)
            bound = program.library.step(place).bound
            if self.last not in node.leads_to:
                node.leads_to.append(self.last)
            if bound is None or place in met:
                return
            node.reads |= program.counters[place].mask
            met.add(place)
            self.chain.append((self.last, program.counters[place]))
            target = bound.after_that

    def __call__(self, bits: int) -> tuple[int, int]:
        for node, counter in self.chain:
            if (bits & counter.mask) >> counter.shift < counter.at_most:
                return node, bits + (1 << counter.shift)
        return self.last, bits


def _question(program: Program, node: Node, step: Question) -> None:
    layout_field = program.layout.field(node.place.pathway, step.ask)
    every = node.reads = layout_field.every
    answers = [
        (answer.id, mask, _Entering(program, node, answer.go_to, node.way_back))
        for answer, mask in answer_masks(step, layout_field)
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
    keep, add = action_effect(
        step, program.library.words(node.place.pathway), program.layout, node.place.pathway
    )
    node.kills = ~keep | add
    enter = _Entering(program, node, step.go_to, node.way_back)
    node.onward = lambda bits: [(DONE, *enter(bits & keep | add))]


def _branch(program: Program, node: Node, step: Branch) -> None:
    def entering(target: StepId | None) -> _Entering | None:
        return None if target is None else _Entering(program, node, target, node.way_back)

    rows = [
        (*condition_masks(row.when, program.layout, node.place.pathway), entering(row.go_to))
        for row in step.rows
    ]
    node.reads |= sum({every for _, terms, _ in rows for every, _ in terms})
    otherwise, not_known = entering(step.otherwise), entering(step.not_known)

    def onward(bits: int) -> list[Next]:
        for forbidden, _, enter in rows:
            if not bits & forbidden and enter:
                return [(None, *enter(bits))]
        open_row = any(all(bits & mask for _, mask in terms) for _, terms, _ in rows)
        enter = not_known if open_row else otherwise
        return [(None, *enter(bits))] if enter else []

    node.onward = onward


def _handover(program: Program, node: Node, step: Handover) -> None:
    there = Place(step.to, program.library.pathways[step.to].start)
    inside = Node(there, (), node.step)
    way_back = (*node.way_back, node.place) if step.on_return else ()
    enter = _Entering(program, inside, there.step, way_back)
    node.leads_to, node.reads = inside.leads_to, inside.reads
    node.onward = lambda bits: [(DONE, *enter(_forget(program, bits, step.to)))]


def _outcome(program: Program, node: Node) -> None:
    handover = program.library.step(node.way_back[-1]) if node.way_back else None
    back = dict(handover.on_return) if isinstance(handover, Handover) else {}
    if node.place.step not in back:
        node.is_end = True
        return
    came_from = node.way_back[-1]
    outside = Node(came_from, (), node.step)
    enter = _Entering(program, outside, back[node.place.step], node.way_back[:-1])
    node.leads_to, node.reads = outside.leads_to, outside.reads
    pathway = node.place.pathway
    node.onward = lambda bits: [(None, *enter(_forget(program, bits, pathway)))]


def _forget(program: Program, bits: int, pathway: PathwayId) -> int:
    for place, counter in program.counters.items():
        if place.pathway == pathway:
            bits &= ~counter.mask
    return bits
