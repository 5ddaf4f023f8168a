"""Forgetting what can no longer be read: an exact reduction of the states to explore.

A finding is live at a node when some walk onward reads it before it is overwritten. What is not
live is set to "all values possible", a count that is not live to nothing. Pathway by pathway: at a
handover is live what the other pathway reads, and what is live where it comes back.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from chamberwise.engine.exploration.program import Program
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.step import Outcome, PathwayId


def mark_live(program: Program) -> None:
    """Set `live` of every node."""
    for node, bits in zip(program.nodes, live(program), strict=True):
        node.live = bits


def live(program: Program, reads: Sequence[int] | None = None) -> list[int]:
    """Return by node what is live there, by backward data flow, to the least fixed point.

    `reads` says by node what is looked at; left out, it is what the steps themselves look at.
    """
    members = _members(program)
    inner_first = _inner_first(program, members)
    reads = [node.reads for node in program.nodes] if reads is None else reads
    flow = _Flow(program, reads, [0] * len(reads))
    for pathway in inner_first:
        flow.through(members[pathway], 0)
        flow.on_entry[pathway] = flow.live_on_entry(pathway)
    for pathway in reversed(inner_first):
        wanted = flow.wanted_back(pathway)
        if wanted:
            flow.through(members[pathway], wanted)
    return flow.live


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


@dataclass(slots=True)
class _Flow:
    program: Program
    reads: Sequence[int]
    live: list[int]
    on_entry: dict[PathwayId, int] = field(default_factory=dict)

    def live_on_entry(self, pathway: PathwayId) -> int:
        """Return what is live on entering, but for its own counts, which begin anew."""
        first = Place(pathway, self.program.library.pathways[pathway].start)
        return self.live[self.program.index[first]] & ~self.program.counts(pathway)

    def wanted_back(self, pathway: PathwayId) -> int:
        """Return what is live at the steps that handovers to a pathway come back to."""
        wanted = 0
        for place, call in self.program.calls.items():
            if call.pathway == pathway and call.back:
                for target in self.program.nodes[place].leads_to:
                    wanted |= self.live[target]
        return wanted & ~self.program.counts(pathway)

    def through(self, places: Sequence[int], end: int) -> None:
        """Let all flow through the steps of a pathway, with what is live at its end."""
        nodes, live, calls = self.program.nodes, self.live, self.program.calls
        before: dict[int, list[int]] = {place: [] for place in places}
        source: dict[int, int] = {}
        for place in places:
            for target in nodes[place].leads_to:
                before[target].append(place)
            call = calls.get(place)
            source[place] = self.reads[place] | (self.on_entry[call.pathway] if call else 0)
            if isinstance(nodes[place].step, Outcome):
                source[place] |= end
            live[place] = source[place]
        waiting = list(places)
        while waiting:
            place = waiting.pop()
            node = nodes[place]
            out = 0
            for target in node.leads_to:
                out |= live[target]
            here = source[place] | out & ~node.kills
            if here != live[place]:
                live[place] = here
                waiting += before[place]
