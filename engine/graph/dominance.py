"""Which steps every way out has to pass: post-dominators (Prosser 1959), by networkx."""

from __future__ import annotations

from collections.abc import Iterable

import networkx as nx

_OUT = ""


class WaysOut:
    """Answers, in constant time, whether every way from one step to an end passes another."""

    def __init__(self, graph: nx.MultiDiGraph[str], ends: Iterable[str]) -> None:
        backwards: nx.DiGraph[str] = nx.DiGraph()
        backwards.add_nodes_from(graph)
        backwards.add_edges_from((after, before) for before, after in graph.edges())
        backwards.add_edges_from((_OUT, end) for end in ends)
        nearest = nx.immediate_dominators(backwards, _OUT) if _OUT in backwards else {}
        below: dict[str, list[str]] = {}
        for name, over in nearest.items():
            if name != _OUT:
                below.setdefault(over, []).append(name)
        self._span = _spans(below)

    def exist(self, step: str) -> bool:
        """Whether any end can be reached from a step."""
        return step in self._span

    def all_pass(self, step: str, other: str) -> bool:
        """Whether every way from `step` to an end passes `other`; a step passes itself."""
        if step not in self._span or other not in self._span:
            return False
        first, last = self._span[other]
        return first <= self._span[step][0] <= last


def _spans(below: dict[str, list[str]]) -> dict[str, tuple[int, int]]:
    """Return, by step, the first and last number of its part of the tree, numbered from above."""
    number: dict[str, int] = {}
    spans: dict[str, tuple[int, int]] = {}
    waiting = [(_OUT, False)]
    while waiting:
        name, leaving = waiting.pop()
        if leaving:
            spans[name] = number[name], len(number) - 1
            continue
        number[name] = len(number)
        waiting.append((name, True))
        waiting += [(each, False) for each in below.get(name, ())]
    return spans
