"""Forgetting what can no longer be read: an exact reduction of the states to explore.

A finding is live at a node when some walk onward reads it before it is overwritten. What is not
live is set to "all values possible", a count that is not live to nothing.
"""

from __future__ import annotations

from chamberwise.engine.exploration.program import Program


def mark_live(program: Program) -> None:
    """Set `live` of every node by backward data flow, to the least fixed point."""
    nodes = program.nodes
    before: list[list[int]] = [[] for _ in nodes]
    for place, node in enumerate(nodes):
        node.live = node.reads
        for target in node.leads_to:
            before[target].append(place)
    waiting = list(range(len(nodes)))
    queued = [True] * len(nodes)
    while waiting:
        place = waiting.pop()
        queued[place] = False
        node = nodes[place]
        out = 0
        for target in node.leads_to:
            out |= nodes[target].live
        live = node.reads | out & ~node.kills
        if live != node.live:
            node.live = live
            for earlier in before[place]:
                if not queued[earlier]:
                    queued[earlier] = True
                    waiting.append(earlier)


def forgotten(bits: int, live: int, findings: int) -> int:
    """Return bits with every dead finding wide open and every dead count at nothing."""
    return bits & live | findings & ~live
