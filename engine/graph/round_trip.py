"""The shortest way round from a step back to itself, for showing a loop to its author."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import networkx as nx


def round_trip(graph: nx.DiGraph[str], name: str) -> tuple[str, ...]:
    """Return the steps of a shortest loop through a step, the step first and last.

    Empty where no loop comes through it. The first arrow written decides between equals.
    """
    before: dict[str, str] = {}
    waiting = [name]
    for here in waiting:
        for after in graph.successors(here):
            if after not in before:
                before[after] = here
                waiting.append(after)
    if name not in before:
        return ()
    steps = [name, before[name]]
    while steps[-1] != name:
        steps.append(before[steps[-1]])
    return tuple(reversed(steps))


def shown(steps: tuple[str, ...]) -> str:
    """Return a way as text, e.g. `look` -> `rinse` -> `look`."""
    return " -> ".join(f"`{name}`" for name in steps)
