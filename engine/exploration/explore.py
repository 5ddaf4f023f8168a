"""Breadth first over every state, so that the first way found to a state is a shortest one."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from chamberwise.engine.exploration.liveness import forgotten, mark_live
from chamberwise.engine.exploration.program import Program, compiled
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.step import PathwayId

MOST_STATES = 1_000_000


@dataclass(slots=True)
class Explored:
    """The states found, in order of distance. `parents` tell the way to each.

    `stopped` is true when there were more states than the limit: then nothing is proved.
    """

    program: Program
    nodes: list[int] = field(default_factory=list)
    bits: list[int] = field(default_factory=list)
    parents: list[tuple[int, str | None]] = field(default_factory=list)
    leads_to: list[list[int]] = field(default_factory=list)
    stopped: bool = False

    def __len__(self) -> int:
        return len(self.nodes)

    def at_node(self, state: int) -> Place:
        """Return the step a state is at."""
        return self.program.nodes[self.nodes[state]].place

    def way_to(self, state: int) -> list[tuple[Place, str]]:
        """Return the moves of a shortest walk to a state: at which step, which move."""
        way: list[tuple[Place, str]] = []
        while state:
            parent, move = self.parents[state]
            if move is not None:
                way.append((self.at_node(parent), move))
            state = parent
        return way[::-1]


def explore(library: Library, pathway: PathwayId, most: int = MOST_STATES) -> Explored:
    """Return every state a walk from the entry of a pathway can come to."""
    program = compiled(library, pathway)
    mark_live(program)
    found = Explored(program)
    findings = program.layout.every
    known: dict[tuple[int, int], int] = {}

    def meet(node: int, bits: int, parent: int, move: str | None) -> int:
        bits = forgotten(bits, program.nodes[node].live, findings)
        state = known.get((node, bits))
        if state is None:
            state = known[node, bits] = len(found.nodes)
            found.nodes.append(node)
            found.bits.append(bits)
            found.parents.append((parent, move))
        return state

    meet(*_entry(program), 0, None)
    while len(found.leads_to) < len(found.nodes):
        here = len(found.leads_to)
        if here >= most:
            found.stopped = True
            break
        node = program.nodes[found.nodes[here]]
        found.leads_to.append(
            [meet(there, bits, here, move) for move, there, bits in node.onward(found.bits[here])]
        )
    return found


def _entry(program: Program) -> tuple[int, int]:
    counter = program.counters.get(program.nodes[0].place)
    return 0, program.first_bits + (1 << counter.shift if counter else 0)


def trapped(found: Explored) -> Iterator[int]:
    """Yield, nearest first, every state from which no end can be reached."""
    before: list[list[int]] = [[] for _ in found.nodes]
    for state, targets in enumerate(found.leads_to):
        for target in targets:
            before[target].append(state)
    free = [state for state, node in enumerate(found.nodes) if found.program.nodes[node].is_end]
    is_free = [False] * len(found.nodes)
    for state in free:
        is_free[state] = True
    while free:
        for earlier in before[free.pop()]:
            if not is_free[earlier]:
                is_free[earlier] = True
                free.append(earlier)
    return (state for state in range(len(found.leads_to)) if not is_free[state])
