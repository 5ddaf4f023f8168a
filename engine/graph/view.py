"""A pathway's steps and arrows as a networkx graph, from which every check of shape starts."""

from __future__ import annotations

import networkx as nx
from chamberwise.engine.graph.targets import all_targets
from chamberwise.engine.model.pathway import Pathway


def step_graph(pathway: Pathway) -> nx.MultiDiGraph[str]:
    """Return the step graph: nodes in document order, one edge an arrow with its `label`.

    Arrows to steps that do not exist are left out; a check of its own reports them.
    """
    graph: nx.MultiDiGraph[str] = nx.MultiDiGraph()
    graph.add_nodes_from(pathway.steps)
    graph.add_edges_from(
        (step.id, target.step, {"label": target.label})
        for step, target in all_targets(pathway)
        if target.step in pathway.steps
    )
    return graph
