"""The straightforward way to prove rules: a networkx graph of states, a product for each rule.

It is given much ready made: the steps as integers, the same reduction of states, the same machines
and what each move does to them. It then explores every state into one `DiGraph` whose nodes are
tuples, and makes for each rule another of pairs of a state and a state of the rule's machine,
breadth first, so that all its nodes can be reached. For a rule no edge is gone through twice.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import networkx as nx
from chamberwise.engine.exploration.compiling import compiled
from chamberwise.engine.exploration.liveness import live
from chamberwise.engine.exploration.program import Program
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import Rule
from chamberwise.engine.model.step import Outcome, Question
from chamberwise.engine.proof.monitors import Monitor, monitors
from chamberwise.engine.proof.shots import Shots

from tests.bench.proof_synthetic import NAME

At = tuple[int, int]
"""A node and what is known there."""


def prove_straight(library: Library, rules: Sequence[Rule]) -> tuple[int, int, list[bool]]:
    """Return how many states and pairs there are, and of each rule whether it holds."""
    program = compiled(library, NAME, by_doors=True)
    watching = [each for each in monitors(rules) if not each.is_trigger]
    shots = Shots(watching, program, NAME)
    graph = _graph(program, shots)
    products = [_product(graph, shots, number, each) for number, each in enumerate(watching)]
    pairs = sum(len(product) for product, _ in products)
    return len(graph) - 1, pairs, [holds for _, holds in products]


def _graph(program: Program, shots: Shots) -> nx.DiGraph[At]:
    """Return every state with its moves; what happens at an outcome leads to one last state."""
    shot_at = [shots.at(node) for node in program.nodes]
    for node, bits in zip(program.nodes, live(program, shots.reads(shot_at)), strict=True):
        node.live = bits
    first = next(_settled(program, 0, program.first_bits))
    graph: nx.DiGraph[At] = nx.DiGraph()
    graph.add_node(first)
    waiting = [first]
    for place, bits in waiting:
        node, shot = program.nodes[place], shot_at[place]
        asks = isinstance(node.step, Question)
        for _, there, after in node.onward(bits):
            made = shot if isinstance(shot, int) else shot(after if asks else bits)
            for target in _settled(program, there, after):
                if target not in graph:
                    waiting.append(target)
                graph.add_edge((place, bits), target, shot=made)
        if isinstance(node.step, Outcome):
            graph.add_edge(
                (place, bits), (-1, 0), shot=shot if isinstance(shot, int) else shot(bits)
            )
    return graph


def _settled(program: Program, place: int, bits: int) -> Iterator[At]:
    """Yield the states come to once all is done that needs no move."""
    node = program.nodes[place]
    findings = program.layout.every
    bits = bits & node.live | findings & ~node.live
    onward = node.onward(bits)
    if onward and onward[0][0] is None:
        for _, there, after in onward:
            yield from _settled(program, there, after)
    else:
        yield place, bits


def _product(
    graph: nx.DiGraph[At], shots: Shots, number: int, monitor: Monitor
) -> tuple[nx.DiGraph[tuple[At, int]], bool]:
    """Return the pairs of a state and a state of the machine, and whether the rule holds."""
    product: nx.DiGraph[tuple[At, int]] = nx.DiGraph()
    start = next(iter(graph)), 0
    product.add_node(start)
    waiting = [start]
    after = [dict(changes).get(number) for changes in shots.changes]
    for state, at in waiting:
        for target, edge in graph.adj[state].items():
            row = after[edge["shot"]]
            pair = target, at if row is None else row[at]
            if pair not in product:
                waiting.append(pair)
            product.add_edge((state, at), pair)
    lost, good = monitor.machine.lost, monitor.machine.good
    broken = any(at == lost or (state == (-1, 0) and at not in good) for state, at in product)
    return product, not broken
