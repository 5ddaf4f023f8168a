"""The fewest walks that take every arrow needed, by a flow with lower bounds of least cost.

Every walk comes back to the beginning by one dear arrow; the flow that uses it least is the fewest
walks, and no set of arrows pairwise on no common walk is larger (Dilworth's theorem in its form for
flows).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Iterable, Sequence
from typing import NamedTuple, TypeVar

Node = TypeVar("Node", bound=Hashable)


class Fewest(NamedTuple):
    """How many walks at least, and over how many arrows together."""

    walks: int
    arrows: int


def fewest_walks(
    arrows: Sequence[tuple[Node, Node]],
    needed: Iterable[int],
    first: Node,
    last: Node,
) -> Fewest:
    """Return the fewest walks from `first` to `last`; `needed` are numbers of arrows.

    Raises `ValueError` where one of them lies on no walk.
    """
    wanted = Counter(needed)
    dear = len(arrows) * (len(wanted) + 1) + 1
    flow = _cheapest(
        [(start, to, 1, wanted[number]) for number, (start, to) in enumerate(arrows)]
        + [(last, first, dear, 0)]
    )
    walks, rest = divmod(flow, dear)
    return Fewest(walks, rest)


def shortest_tour(arrows: Sequence[tuple[Node, Node]]) -> int:
    """Return over how many arrows a closed walk leads that takes each at least once."""
    return _cheapest([(start, to, 1, 1) for start, to in arrows])


def _cheapest(arrows: Sequence[tuple[Node, Node, int, int]]) -> int:
    """Return the least cost of a circulation; of each arrow its cost and its lower bound."""
    import networkx as nx

    graph: nx.MultiDiGraph[Node] = nx.MultiDiGraph()
    owed: Counter[Node] = Counter()
    cost = 0
    for start, to, price, least in arrows:
        graph.add_edge(start, to, weight=price)
        owed[to] -= least
        owed[start] += least
        cost += price * least
    for node in graph:
        graph.nodes[node]["demand"] = owed[node]
    try:
        more, _ = nx.network_simplex(graph)
    except nx.NetworkXUnfeasible as error:
        raise ValueError("an arrow that is needed lies on no walk") from error
    return cost + int(more)
