"""A loop from which no outcome can be reached."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.graph.ends import ends
from chamberwise.engine.graph.round_trip import round_trip, shown
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

if TYPE_CHECKING:
    import networkx as nx

CODE = Code(
    "no-way-out",
    Severity.ERROR,
    N_("A loop from which no outcome can be reached"),
    N_("A team that comes here is trapped with the eye open."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every loop that leads to no outcome and no handover for good.

    It is told once, at its first step; the steps that lead into it have no fault of their own.
    """
    import networkx as nx

    graph = subject.graph
    where = ends(subject.library, subject.pathway)
    layers = nx.bfs_layers(graph.reverse(copy=False), where) if where else ()
    leads_out = {name for layer in layers for name in layer}
    stuck = graph.subgraph([name for name in graph if name not in leads_out])
    for loop in _without_a_way_on(stuck):
        name = next(each for each in subject.pathway.steps if each in loop)
        round_about = round_trip(stuck, name)
        message = _("no outcome can be reached from `{name}`").format(name=name)
        if len(round_about) > 2:
            message = _("no outcome can be reached from the loop {loop}").format(
                loop=shown(round_about)
            )
        advice = _("Lead one of its arrows, or one further on, to an outcome.")
        yield subject.problem(CODE, ("steps", name), message, advice, at_key=True)


def _without_a_way_on(stuck: nx.DiGraph[str]) -> list[set[str]]:
    """Return the parts of a graph that lead into no other part."""
    import networkx as nx

    parts = nx.strongly_connected_components(stuck)
    return [each for each in parts if all(after in each for _name, after in stuck.edges(each))]
