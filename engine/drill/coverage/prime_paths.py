"""Prime paths of a graph: the longest paths that come by no node twice, but back to their first.

A path is prime where no arrow can be put before or behind it and leave it simple; going through
every prime path goes through each loop not at all, once, and more than once (Ammann and Offutt,
Introduction to Software Testing, chapter on graph coverage).
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Mapping, Sequence
from typing import TypeAlias, TypeVar

Node = TypeVar("Node", bound=Hashable)
Graph: TypeAlias = Mapping[Node, Sequence[Node]]
"""By node, the nodes that arrows lead to; every node is a key."""

MOST = 100_000
"""So many simple paths are looked at; a graph may have exponentially many."""


class TooManyPathsError(ValueError):
    """There are more simple paths than were to be looked at."""


def simple_paths(graph: Graph[Node], most: int = MOST) -> Iterator[tuple[Node, ...]]:
    """Yield every path that comes by no node twice, a single node and a ring among them.

    Raises `TooManyPathsError` after `most` of them.
    """
    seen = 0
    waiting: list[tuple[Node, ...]] = [(node,) for node in reversed(list(graph))]
    while waiting:
        path = waiting.pop()
        seen += 1
        if seen > most:
            raise TooManyPathsError(f"more than {most} simple paths")
        yield path
        if not _is_ring(path):
            ways = dict.fromkeys(graph[path[-1]])
            waiting += [(*path, to) for to in reversed(list(ways)) if _is_open(path, to)]


def prime_paths(graph: Graph[Node], most: int = MOST) -> tuple[tuple[Node, ...], ...]:
    """Return the prime paths. Raises `TooManyPathsError`."""
    before: dict[Node, list[Node]] = {node: [] for node in graph}
    for node, ways in graph.items():
        for to in dict.fromkeys(ways):
            before[to].append(node)
    return tuple(
        path
        for path in simple_paths(graph, most)
        if _is_ring(path)
        or not (
            any(_is_open(path, to) for to in graph[path[-1]])
            or any(_is_open(path[::-1], each) for each in before[path[0]])
        )
    )


def toured(walk: Sequence[Node], path: Sequence[Node]) -> int:
    """Return how often a walk goes along a path, without a step between."""
    long, wanted = len(path), tuple(path)
    return sum(tuple(walk[at : at + long]) == wanted for at in range(len(walk) - long + 1))


def _is_ring(path: Sequence[Node]) -> bool:
    return len(path) > 1 and path[0] == path[-1]


def _is_open(path: Sequence[Node], to: Node) -> bool:
    """Whether a path stays simple with one node more: a new one, or back to its first."""
    return to == path[0] or to not in path
