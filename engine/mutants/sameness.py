"""Whether a team could ever tell a mutant from its original.

A mutant on whose every walk the team is asked, told and warned of the same things, with the same
answers open, is the original in other words. Mutation testing calls it equivalent; it measures
nothing. Original and mutant are walked side by side with every bound of a loop left open, stopping
where a bounded step is entered: walks that enter the same steps count alike.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

import networkx as nx
from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.exploration.liveness import mark_live
from chamberwise.engine.exploration.program import Node, Program
from chamberwise.engine.graph.met import view
from chamberwise.engine.graph.view import step_graph
from chamberwise.engine.model.library import Library, Place
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import (
    Branch,
    Outcome,
    PathwayId,
    Question,
    StepId,
)

MOST_PAIRS = 400_000
MOST_TURNS = 1_000

State: TypeAlias = tuple[int, tuple[int, ...], int]
"""A node, the handovers to come back to, and the bits of what is known."""


@dataclass(slots=True)
class Walked:
    """One side: what the team meets at each node, and where each state met so far leads."""

    program: Program
    views: Sequence[Hashable]
    first: State
    leads_to: dict[State, list[State]] = field(default_factory=dict)

    def met(self, state: State) -> Hashable:
        """Return what is met at a state, with the answers that are open."""
        place, _, bits = state
        return self.views[place], bits & self.program.nodes[place].asked

    def onward(self, state: State) -> list[State]:
        """Return the states that the moves at a state lead to, in order."""
        found = self.leads_to.get(state)
        if found is None:
            found = self.leads_to[state] = [self.stands(each) for each in self._moves(state)]
        return found

    def stands(self, state: State) -> State:
        """Return where a walk stands once all is done that needs no move."""
        for _ in range(MOST_TURNS):
            silently = self._silently(state)
            if silently is None:
                break
            state = silently
        place, stack, bits = state
        live = self.program.nodes[place].live
        return place, stack, bits & live | self.program.layout.every & ~live

    def _moves(self, state: State) -> list[State]:
        place, stack, bits = state
        call = self.program.calls.get(place)
        if call is not None and not self.program.nodes[place].is_door:
            there, after = call.enter(bits)
            return [(there, (*stack, place) if call.back else (), after)]
        return [(there, stack, after) for _, there, after in self.program.nodes[place].onward(bits)]

    def _silently(self, state: State) -> State | None:
        place, stack, bits = state
        node = self.program.nodes[place]
        if node.is_door or not isinstance(node.step, Question | Branch | Outcome):
            return None
        if isinstance(node.step, Outcome):
            return self._back(node.step.id, stack, bits)
        onward = node.onward(bits)
        if not onward or onward[0][0] is not None:
            return None
        return onward[0][1], stack, onward[0][2]

    def _back(self, outcome: str, stack: tuple[int, ...], bits: int) -> State | None:
        enter = self.program.calls[stack[-1]].back.get(outcome) if stack else None
        if enter is None:
            return None
        there, after = enter(bits)
        return there, stack[:-1], after


def walked(library: Library, pathway: PathwayId) -> Walked:
    """Return one side, standing at its entry."""
    program = compiled(library, pathway, by_doors=True, counted=_met_once(library))
    mark_live(program)
    side = Walked(program, [_met_at(node) for node in program.nodes], (0, (), program.first_bits))
    side.first = side.stands(side.first)
    return side


def is_same(original: Walked, mutant: Walked) -> bool:
    """Whether no walk tells one side from the other; `False` too where that takes too long."""
    if _counted_at_once(original) != _counted_at_once(mutant):
        return False
    waiting = [(original.first, mutant.first)]
    met = set(waiting)
    while waiting and len(met) < MOST_PAIRS:
        one, other = waiting.pop()
        left, right = original.onward(one), mutant.onward(other)
        if original.met(one) != mutant.met(other) or len(left) != len(right):
            return False
        new = [pair for pair in zip(left, right, strict=True) if pair not in met]
        met.update(new)
        waiting += new
    return not waiting


def _met_at(node: Node) -> Hashable:
    bound = node.step.bound
    return (node.place, bound.at_most) if node.is_door and bound else view(node.step)


def _counted_at_once(side: Walked) -> Place | None:
    """Return the entry, if being there is counted."""
    entry = side.program.nodes[0]
    return entry.place if entry.step.bound else None


def _met_once(library: Library) -> frozenset[Place]:
    """Return the bounded steps that no arrow leads back to.

    Such a step is entered once at most each time its pathway is, and its bound turns nobody away.
    """
    return frozenset(
        Place(name, step.id)
        for name, pathway in library.pathways.items()
        for met_again in [frozenset(_met_again(pathway))]
        for step in pathway.steps.values()
        if step.bound and step.id not in met_again
    )


def _met_again(pathway: Pathway) -> Iterator[StepId]:
    graph = step_graph(pathway)
    for group in nx.strongly_connected_components(graph):
        if len(group) > 1 or any(graph.has_edge(step, step) for step in group):
            yield from group
