"""Forgetting what can no longer be read: an exact reduction of the states to explore.

A finding is live at a node when some walk onward reads it before it is overwritten. What is not
live is set to "all values possible", a count that is not live to nothing. Pathway by pathway: at a
handover is live what the other pathway reads, and what is live where it comes back.
"""

from __future__ import annotations

from chamberwise.engine.exploration.program import Program
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.step import Outcome, PathwayId


def mark_live(program: Program) -> None:
    """Set `live` of every node by backward data flow, to the least fixed point."""
    members = _members(program)
    inner_first = _inner_first(program, members)
    on_entry: dict[PathwayId, int] = {}
    for pathway in inner_first:
        _flow(program, members[pathway], on_entry, 0)
        on_entry[pathway] = _entry_live(program, pathway)
    for pathway in reversed(inner_first):
        wanted = _wanted_back(program, pathway)
        if wanted:
            _flow(program, members[pathway], on_entry, wanted)


def _members(program: Program) -> dict[PathwayId, list[int]]:
    members: dict[PathwayId, list[int]] = {}
    for place, node in enumerate(program.nodes):
        members.setdefault(node.place.pathway, []).append(place)
    return members


def _inner_first(program: Program, members: dict[PathwayId, list[int]]) -> list[PathwayId]:
    """Return the pathways, each after all it hands over to; handovers never go round."""
    order: list[PathwayId] = []
    _visit(program, members, program.nodes[0].place.pathway, order)
    return order


def _visit(
    program: Program,
    members: dict[PathwayId, list[int]],
    pathway: PathwayId,
    order: list[PathwayId],
) -> None:
    if pathway in order:
        return
    for place in members[pathway]:
        if place in program.calls:
            _visit(program, members, program.calls[place].pathway, order)
    order.append(pathway)


def _entry_live(program: Program, pathway: PathwayId) -> int:
    """Return what is live on entering, but for its own counts, which begin anew."""
    first = Place(pathway, program.library.pathways[pathway].start)
    return program.nodes[program.index[first]].live & ~program.counts(pathway)


def _wanted_back(program: Program, pathway: PathwayId) -> int:
    """Return what is live at the steps that handovers to a pathway come back to."""
    wanted = 0
    for place, call in program.calls.items():
        if call.pathway == pathway and call.back:
            for target in program.nodes[place].leads_to:
                wanted |= program.nodes[target].live
    return wanted & ~program.counts(pathway)


def _flow(program: Program, places: list[int], on_entry: dict[PathwayId, int], end: int) -> None:
    nodes = program.nodes
    before: dict[int, list[int]] = {place: [] for place in places}
    source: dict[int, int] = {}
    for place in places:
        for target in nodes[place].leads_to:
            before[target].append(place)
        call = program.calls.get(place)
        entered = on_entry[call.pathway] if call else 0
        source[place] = nodes[place].reads | entered
        if isinstance(nodes[place].step, Outcome):
            source[place] |= end
        nodes[place].live = source[place]
    waiting = list(places)
    while waiting:
        place = waiting.pop()
        node = nodes[place]
        out = 0
        for target in node.leads_to:
            out |= nodes[target].live
        live = source[place] | out & ~node.kills
        if live != node.live:
            node.live = live
            waiting += before[place]
